import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DESK, leaders, PHONE, replay, servePlayground, type Playground } from './openPlayground.ts';

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

/** Opens the form of a test in the search for something already done. */
async function openTest(page: Page, words: string): Promise<void> {
  await page.getByText('Record something already done').first().click();
  await page.getByLabel('Find a test or repair').fill(words);
  await page.locator('#next li button.name').first().click();
}

async function overhang(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('dialog[open] *, #next *')]
      .filter((one) => !one.closest('.scroll, svg, .unseen') && one.getClientRects().length > 0)
      .filter((one) => one.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5)
      .map((one) => `${one.tagName}.${one.className}`),
  );
}

for (const [size, viewport] of [
  ['360 px', PHONE],
  ['a desk', DESK],
] as const) {
  test(`numbers are entered in place, judged, recorded, shown and taken back at ${size}`, async () => {
    const { page, complaints, strangers } = await playground.open({ worksBeside: true, viewport });
    const before = await leaders(page);
    await openTest(page, 'cranking compression');
    const form = page.locator('#next details[open]');
    await form.getByRole('button', { name: 'Enter the numbers' }).click();
    await form.getByLabel('Misfires on').selectOption({ label: 'Cylinder 3' });
    for (const [cylinder, text] of ['12,4', '12.1', '125', '12.5'].entries())
      await form.getByLabel(`Cyl. ${cylinder + 1}`).fill(text);
    expect(await form.innerText()).toMatch(/psi instead of bar/);
    await form.getByRole('button', { name: 'Record these numbers' }).click();
    expect(await leaders(page)).toEqual(before);

    await form.getByLabel('Cyl. 3').fill('4');
    expect(await form.locator('.says').innerText()).toMatch(/Compared value: 0\.32[\s\S]*Rule of thumb\s*Not met/);
    expect(await overhang(page)).toEqual([]);
    await form.getByRole('button', { name: 'Record these numbers' }).click();
    await expect.poll(() => leaders(page)).not.toEqual(before);
    expect(await page.locator('#notes').innerText()).toMatch(/4 bar on cylinder 3, 12\.1 to 12\.5 bar on the others/);
    await page
      .locator('#notes')
      .getByRole('button', { name: /^Take back/ })
      .click();
    await expect.poll(() => leaders(page)).toEqual(before);
    expect(complaints).toEqual([]);
    expect(strangers).toEqual([]);
  });
}

test('pasted codes become results, and the undo key stays with the text while it is typed', async () => {
  const { page, complaints } = await playground.open({ worksBeside: true, viewport: PHONE });
  await page.locator('#next summary', { hasText: 'Paste trouble codes' }).click();
  const form = page.locator('#next details[open]');
  await form.getByLabel('Misfires on').selectOption({ label: 'Cylinder 2' });
  await form.getByLabel(/^Trouble codes/).fill('P0302 P0352 pending, P0420 PO301');
  expect(await form.innerText()).toMatch(/did you mean P0301[\s\S]*Will be recorded[\s\S]*P0420 \(/);
  await page.keyboard.press('Control+z');
  await form.getByLabel(/^Trouble codes/).fill('P0302 P0352 pending, P0420');
  await form.getByRole('button', { name: 'Record these 2 results' }).click();
  await expect.poll(() => page.locator('#notes ol li').count()).toBe(2);
  expect(complaints).toEqual([]);
});

test('how sure it is appears beside the page, which goes on answering meanwhile', async () => {
  const { page, complaints, strangers } = await playground.open({ worksBeside: true });
  await replay(page, 7, 5);
  await page.getByLabel('Name of this case').fill('Typed while it works');
  expect(await page.getByLabel('Name of this case').inputValue()).toBe('Typed while it works');
  const sure = page.locator('#shift');
  await sure.getByText(/^Same advice in/).waitFor();
  expect(await sure.locator('.range').first().innerText()).toMatch(/\d+%? to \d/);
  expect(await sure.getByText(/plausible models/).count()).toBeGreaterThan(0);
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});

test('numbers are questioned with the keyboard; the case stays as it is', async () => {
  const { page, complaints } = await playground.open({ worksBeside: true });
  await replay(page, 7, 5);
  const before = await leaders(page);
  await page.getByRole('button', { name: 'Check the numbers' }).click();
  const sheet = page.getByRole('dialog');
  const slider = sheet.getByRole('slider').first();
  await slider.waitFor();
  await slider.focus();
  for (let press = 0; press < 60; press += 1) await page.keyboard.press('ArrowRight');
  await expect.poll(() => sheet.getByRole('region', { name: 'With these changes' }).innerText()).toMatch(/→/);
  await sheet.getByRole('button', { name: 'Reset all' }).click();
  await expect.poll(() => sheet.innerText()).toMatch(/Nothing is changed yet/);
  await page.keyboard.press('Escape');
  expect(await leaders(page)).toEqual(before);
  expect(complaints).toEqual([]);
});
