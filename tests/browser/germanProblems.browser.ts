import { afterAll, beforeAll, expect, test } from 'vitest';
import { PHONE, servePlayground, type Playground } from './openPlayground.ts';

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

const HEADING = 'Jetzt am wahrscheinlichsten';
/** Words of core's English sentences; German has none of them. */
const ENGLISH =
  /\b(found|expected|the|this|with|look at|is it|did you mean|needs|cylinder|use|add|of it|more steps?|Half|referred|is still there,|fixed)\b/i;

test('a damaged file is explained in German', async () => {
  const { page } = await playground.open({ locale: 'de', viewport: PHONE }, undefined, HEADING);
  for (const [text, said] of [
    ['{"format":"something-else","version":2}', /gefunden: Format „something-else“, erwartet: „faultodds-case“/],
    ['{"format":"faultodds-case","version":99}', /Version 99 des Formats/],
    [
      '{"format":"faultodds-case","version":2,"id":"x","title":"X","events":[{"kind":"engine-set","cylinders":4,"suspect":6},{"kind":"result-recorded","id":"r1","test":"coil-swop","outcome":"stays"}]}',
      /keinen Zylinder 6 hat ein Motor mit 4 Zylindern[\s\S]*nicht bekannt: Prüfung „coil-swop“[\s\S]*ist „coil-swap“ gemeint\?/,
    ],
  ] as const) {
    await page.getByRole('button', { name: 'Fälle' }).click();
    await page
      .getByRole('dialog')
      .locator('input[type=file]')
      .setInputFiles({ name: 'damaged.json', mimeType: 'application/json', buffer: Buffer.from(text) });
    const alert = page.getByRole('alert');
    await alert.locator('li').first().waitFor();
    const shown = await alert.innerText();
    expect(shown).toMatch(said);
    expect(shown).not.toMatch(ENGLISH);
    await alert.getByRole('button').click();
  }
});

test('numbers that cannot be, codes that are none, an engine that does not fit: in German', async () => {
  const { page, complaints } = await playground.open({ locale: 'de', viewport: PHONE }, undefined, HEADING);
  await page.getByText('Etwas schon Getanes eintragen').first().click();
  await page.getByLabel('Prüfung oder Reparatur suchen').fill('cranking compression');
  await page.locator('#next li button.name').first().click();
  const form = page.locator('#next details[open]');
  await form.getByRole('button', { name: 'Zahlen eingeben' }).click();
  await form.getByLabel('Setzt aus an').selectOption('3');
  for (const [at, text] of ['12,4', '12,1', '125', '12,5'].entries())
    await form.getByLabel(`Zyl. ${at + 1}`).fill(text);
  const wrong = form.locator('[aria-invalid="true"]').first();
  await wrong.waitFor();
  const told = await page.locator(`#${await wrong.getAttribute('aria-describedby')}`).innerText();
  expect(told).toMatch(/gefunden: 125 bar, erwartet: 0 bis 6000 kPa\. sind es psi statt bar\?/);
  await form.getByLabel('Zyl. 3').fill('9,2');
  await form.getByRole('button', { name: 'Diese Zahlen eintragen' }).click();
  await page.locator('#notes').getByText('9,2 bar an Zylinder 3').waitFor();

  await page.locator('#car').getByLabel('Setzt aus an').selectOption('2');
  await page.getByText('gemessen wurde für Zylinder 3, aber Zylinder 2 hat Aussetzer').waitFor();
  expect(await page.getByRole('alert').first().innerText()).not.toMatch(ENGLISH);

  await page.locator('#next summary', { hasText: 'Fehlercodes einfügen' }).click();
  const codes = page.locator('#next details[open]').last();
  await codes.locator('textarea').fill('P03O1, 0303, P03');
  await codes.getByText('ist P0301 gemeint?').waitFor();
  await codes.getByText('fehlt der Buchstabe: P0303?').waitFor();
  await codes.getByText('ein Code hat einen Buchstaben und vier Ziffern, dieser 2').waitFor();
  expect(complaints).toEqual([]);
});

test('the whole plan as text is German, names of the knowledge aside', async () => {
  const { page } = await playground.open({ worksBeside: true, locale: 'de', viewport: PHONE }, undefined, HEADING);
  await page.getByRole('button', { name: 'Weiter vorausschauen' }).click();
  await page.getByRole('button', { name: 'Den ganzen Plan ausrechnen' }).click();
  await page.getByText('Der Plan als Text').click();
  const text = await page.locator('dialog[open] pre').innerText();
  expect(text).toMatch(/^Erwartete Kosten .* Einheiten/);
  expect(text).toMatch(/In der Hälfte der Fälle bis /);
  expect(text).toMatch(/… \d+ weitere[r]? Schritte?/);
  expect(text).not.toMatch(/Expected|Half of|more steps?|the fault remains|referred/);
});
