import { afterAll, beforeAll, expect, test } from 'vitest';
import { PHONE, replay, servePlayground, type Playground } from './openPlayground.ts';

const PROJECTOR = { width: 1920, height: 1080 };

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

test('at 360 px the three leading causes and the best next step with its price are in sight without scrolling', async () => {
  const { page } = await playground.open({ viewport: PHONE });
  const bar = (await page.getByRole('navigation').boundingBox())!;
  for (const part of ['#now ol li:nth-child(3)', '#now .step', '#now .price', '#now button.main']) {
    const box = (await page.locator(part).boundingBox())!;
    expect(box.y).toBeGreaterThan(0);
    expect(box.y + box.height).toBeLessThanOrEqual(bar.y);
  }
});

test('nothing hangs over the edge of a projector', async () => {
  const { page } = await playground.open({ viewport: PROJECTOR });
  await replay(page, 7, 13);
  const over = await page.evaluate(() =>
    [...document.querySelectorAll('main *')]
      .filter((one) => !one.closest('.scroll, svg, .unseen') && one.getClientRects().length > 0)
      .filter((one) => one.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5)
      .map((one) => `${one.tagName}.${one.className}`),
  );
  expect(over).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PROJECTOR.width);
});

test('the labels of the picture do not overlap, and no name is cut off', async () => {
  const { page } = await playground.open();
  for (const [demo, steps] of [
    [10, 3],
    [6, 4],
    [3, 5],
  ] as const) {
    await replay(page, demo, steps);
    const problems = await page.evaluate(() => {
      const found: string[] = [];
      for (const side of document.querySelectorAll('.ends')) {
        const boxes = [...side.querySelectorAll('.end')].map((one) => ({ one, box: one.getBoundingClientRect() }));
        boxes.sort((a, b) => a.box.top - b.box.top);
        boxes.forEach(({ one, box }, at) => {
          const above = boxes[at - 1]?.box;
          if (above && box.top < above.bottom - 5) found.push(`overlap: ${one.textContent}`);
        });
        for (const name of side.querySelectorAll('.name'))
          if (name.scrollHeight > name.clientHeight + 1 || name.scrollWidth > name.clientWidth + 1)
            found.push(`cut: ${name.textContent}`);
      }
      return found;
    });
    expect(problems).toEqual([]);
  }
});

test('light and dark follow the device until one is chosen, and the choice is kept', async () => {
  const { page } = await playground.open({ colorScheme: 'dark' });
  const paper = (): Promise<string> => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  const dark = await paper();
  await page.getByRole('button', { name: /^Light or dark/ }).click();
  const light = await paper();
  expect(light).not.toBe(dark);
  await page.reload();
  await page.getByRole('heading', { name: 'Most likely now' }).waitFor();
  expect(await paper()).toBe(light);
});

test('reading along the columns moves nothing below the picture', async () => {
  const { page } = await playground.open();
  await replay(page, 7, 9);
  const below = (): Promise<number> =>
    page.evaluate(() => document.querySelector('#shift > h2')!.getBoundingClientRect().top + scrollY);
  const tops = new Set<number>();
  for (const column of await page.getByRole('toolbar').getByRole('button').all()) {
    await column.hover();
    tops.add(Math.round(await below()));
  }
  expect([...tops]).toHaveLength(1);
});

test('nothing on the page says 0% or 100%', async () => {
  const { page } = await playground.open();
  await replay(page, 7, 13);
  for (const summary of await page.locator('main details > summary').all())
    if (await summary.isVisible()) await summary.click();
  const text = await page.locator('main').innerText();
  expect(text).toMatch(/\d%/);
  expect(text.match(/(?<![\d.])(0|100)\s?%/g)).toBeNull();
});
