import { AxeBuilder } from '@axe-core/playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DESK, PHONE, servePlayground, type Playground } from './openPlayground.ts';

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

for (const [size, viewport, colorScheme] of [
  ['a phone, light', PHONE, 'light'],
  ['a desk, dark', DESK, 'dark'],
] as const) {
  test(`the figures stand alone on their example page (${size})`, async () => {
    const { page, complaints, strangers } = await playground.open({ viewport, colorScheme });
    await page.goto(`${playground.address}examples.html`);
    await page.getByRole('heading', { name: 'Figures by themselves' }).waitFor();
    expect(await page.locator('section > h2').count()).toBe(5);
    await page.locator('.columns').getByRole('button').first().click();
    expect(await page.locator('.rank-shift text.value').textContent()).toBe(viewport === PHONE ? '48%' : '30%'); // a phone shows the newest three of four
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id} ${nodes[0]?.target}`)).toEqual([]);
    expect([...complaints, ...strangers]).toEqual([]);
  });
}
