import { AxeBuilder } from '@axe-core/playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DESK, PHONE, servePlayground, type Playground } from './openPlayground.ts';

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

/** Words of the page's English that may not stand on a German page; those of the knowledge may. */
const ENGLISH =
  /\b(Most likely|Best next step|Next steps|How the ranking|Recorded|Set-up|Undo|Redo|Cases|Report|Opens|Needs|saves|The car|Not stated|probability|after|before any test)\b/;

for (const [size, viewport, colorScheme] of [
  ['a phone, dark', PHONE, 'dark'],
  ['a desk, light', DESK, 'light'],
] as const) {
  test(`the page speaks German when it is chosen, keeps the case, and remembers (${size})`, async () => {
    const { page, complaints } = await playground.open({ viewport, colorScheme });
    await page.getByLabel('When does it misfire?').selectOption({ index: 1 });
    await page
      .getByRole('button', { name: /^Record:/ })
      .first()
      .click();
    await page.getByRole('button', { name: 'Settings' }).click();
    await page.getByLabel('Language').selectOption('de');
    await page.getByRole('heading', { name: 'Jetzt am wahrscheinlichsten' }).waitFor();
    expect(await page.locator('html').getAttribute('lang')).toBe('de');
    const chrome = await page
      .locator(
        'main h2, main legend, main summary, nav, header, footer p:last-child, .futures + *, #now .reason, .scrub, main dt',
      )
      .allInnerTexts();
    expect(chrome.join('\n')).not.toMatch(ENGLISH);
    expect(await page.locator('#now .reason').innerText()).toMatch(/Von 1000 solchen Motoren/);
    expect(await page.locator('#next .price').first().innerText()).toMatch(/Einheit/);
    expect(await page.locator('#now .chance').first().innerText()).toMatch(/^\d+(,\d+)?\s%$/);
    await page.getByText('Das Wissen selbst').waitFor();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id} ${nodes[0]?.target}`)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);

    await page.reload();
    await page.getByRole('heading', { name: 'Jetzt am wahrscheinlichsten' }).waitFor();
    expect(complaints).toEqual([]);
  });
}

test('a browser set to German opens the page in German, and English is one choice away', async () => {
  const { page } = await playground.open({ locale: 'de-AT' }, undefined, 'Jetzt am wahrscheinlichsten');
  await page.getByRole('button', { name: 'Einstellungen' }).click();
  await page.getByLabel('Sprache').selectOption('en');
  await page.getByRole('heading', { name: 'Most likely now' }).waitFor();
});

test('the keys of the page are shown by F1 and by a button', async () => {
  const { page, complaints } = await playground.open({ viewport: PHONE });
  await page.keyboard.press('F1');
  const sheet = page.getByRole('dialog', { name: 'Keyboard shortcuts' });
  await sheet.waitFor();
  expect(await sheet.innerText()).toMatch(/Ctrl \+ Z\s+undo the last step/);
  const { violations } = await new AxeBuilder({ page }).include('dialog[open]').analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Keyboard shortcuts' }).click();
  await sheet.waitFor();
  expect(complaints).toEqual([]);
});
