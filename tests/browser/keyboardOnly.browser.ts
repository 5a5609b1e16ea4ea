import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { leaders, servePlayground, type Playground } from './openPlayground.ts';

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

/** Presses Tab until the focus is on what is named; fails when it never gets there. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  const met: string[] = [];
  for (let presses = 0; presses < 200; presses += 1) {
    await page.keyboard.press('Tab');
    const label = await page.evaluate(() => {
      const here = document.activeElement as HTMLElement | null;
      if (!here) return '';
      const labelled = (here as HTMLInputElement).labels?.[0]?.innerText ?? '';
      return here.getAttribute('aria-label') ?? (labelled || here.innerText || here.title);
    });
    met.push(label);
    if (name.test(label)) return;
  }
  expect.fail(`Tab never reaches ${name}; it met: ${met.join(' | ')}`);
}

test('a whole visit by keyboard: record an outcome, read the columns, take it back', async () => {
  const { page, complaints } = await playground.open();
  const before = await leaders(page);

  // a result that moves the ranking: of the first, a sound circuit does not
  await tabTo(page, /^Record:[^]*coil/i);
  // until the step stands, outcomes take the focus and record nothing
  await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-disabled'))).not.toBe('true');
  await page.keyboard.press('Enter');
  await expect.poll(() => leaders(page)).not.toEqual(before);
  const after = await leaders(page);

  await page.keyboard.press('Control+z');
  await expect.poll(() => leaders(page)).toEqual(before);
  await page.keyboard.press('Control+Shift+z');
  await expect.poll(() => leaders(page)).toEqual(after);

  await tabTo(page, /Leading: /);
  const latest = await page.locator('.moment > h3').innerText();
  await page.keyboard.press('ArrowLeft');
  await expect.poll(() => page.locator('.moment > h3').innerText()).not.toBe(latest);
  await page.keyboard.press('ArrowDown');
  await expect.poll(() => page.locator('.rank-shift [aria-live]').innerText()).toMatch(/\d%/);
  await page.keyboard.press('Escape');
  await expect.poll(() => page.locator('.moment > h3').innerText()).toBe(latest);

  await tabTo(page, /^Take this result back/);
  await page.keyboard.press('Enter');
  await expect.poll(() => leaders(page)).toEqual(before);
  expect(complaints).toEqual([]);
});

test('a sheet keeps the focus, Escape closes it and gives the focus back', async () => {
  const { page } = await playground.open();
  await tabTo(page, /^Cases/);
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Cases' });
  await dialog.waitFor();
  for (let presses = 0; presses < 60; presses += 1) {
    await page.keyboard.press('Tab');
    const inside = await page.evaluate(
      () => document.activeElement === document.body || document.activeElement?.closest('dialog') !== null,
    );
    expect(inside).toBe(true);
  }
  await page.keyboard.press('Escape');
  await dialog.waitFor({ state: 'hidden' });
  expect(await page.evaluate(() => (document.activeElement as HTMLElement).innerText)).toMatch(/Cases/);
});

test('whatever has the focus shows it', async () => {
  const { page } = await playground.open();
  for (let presses = 0; presses < 40; presses += 1) {
    await page.keyboard.press('Tab');
    const outline = await page.evaluate(() => {
      const style = getComputedStyle(document.activeElement!);
      return `${style.outlineStyle} ${style.outlineWidth}`;
    });
    expect(outline).toBe('solid 3px');
  }
});
