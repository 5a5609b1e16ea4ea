import { AxeBuilder } from '@axe-core/playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { leaders, opened, PHONE, servePlayground, type Playground } from './openPlayground.ts';
import { readDownload } from './readDownload.ts';

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

const WORDS = {
  en: {
    heading: 'Most likely now',
    cylinders: 'Cylinders',
    suspect: 'Misfires on',
    third: 'Cylinder 3',
    undo: 'Undo',
    redo: 'Redo',
    cases: 'Cases',
    save: 'Save this case as a file',
    report: 'Report of this case',
    said: 'Cylinder 3 of 6 misfires',
  },
  de: {
    heading: 'Jetzt am wahrscheinlichsten',
    cylinders: 'Zylinder',
    suspect: 'Setzt aus an',
    third: 'Zylinder 3',
    undo: 'Zurück',
    redo: 'Wieder',
    cases: 'Fälle',
    save: 'Diesen Fall als Datei sichern',
    report: 'Bericht zu diesem Fall',
    said: 'Zylinder 3 von 6 hat Aussetzer',
  },
} as const;

test.each(['en', 'de'] as const)(
  'on a phone the engine is stated with two choices and stays in the case (%s)',
  async (locale) => {
    const words = WORDS[locale];
    const { page, complaints } = await playground.open({ viewport: PHONE, locale }, undefined, words.heading);
    const atStart = await leaders(page);
    const car = page.locator('#car');
    const [cylinders, suspect] = [
      car.getByLabel(words.cylinders, { exact: true }),
      car.getByLabel(words.suspect, { exact: true }),
    ];
    for (const choice of [cylinders, suspect]) {
      const box = (await choice.boundingBox())!;
      expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
      expect(box.x + box.width).toBeLessThanOrEqual(PHONE.width);
    }
    await cylinders.selectOption('6');
    // not whole yet: nothing is in the case
    expect(await page.getByRole('button', { name: words.undo }).isDisabled()).toBe(true);
    await suspect.selectOption({ label: words.third });
    await expect.poll(() => page.getByRole('button', { name: words.undo }).isEnabled()).toBe(true);
    expect(await leaders(page)).toEqual(atStart);
    await page.getByRole('button', { name: words.undo }).click();
    await expect.poll(() => suspect.inputValue()).toBe('0');
    await page.getByRole('button', { name: words.redo }).click();
    await expect.poll(() => suspect.inputValue()).toBe('3');
    const { violations } = await new AxeBuilder({ page }).include('#car').analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);

    await page.reload();
    await page.getByRole('heading', { name: words.heading }).waitFor();
    await opened(page);
    expect([await cylinders.inputValue(), await suspect.inputValue()]).toEqual(['6', '3']);

    await page.getByRole('button', { name: words.cases }).click();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: words.save }).click(),
    ]);
    expect(JSON.parse((await readDownload(download)).toString())).toMatchObject({
      version: 3,
      events: [{ kind: 'engine-set', cylinders: 6, suspect: 3 }],
    });
    await page.getByRole('button', { name: words.report }).click();
    await page.getByText(words.said).first().waitFor();
    expect(complaints).toEqual([]);
  },
);

test('a link carries the engine; numbers take it over, and keep it from changing under them', async () => {
  const sender = await playground.open({ viewport: PHONE });
  const senderCar = sender.page.locator('#car');
  await senderCar.getByLabel('Cylinders', { exact: true }).selectOption('3');
  await senderCar.getByLabel('Misfires on', { exact: true }).selectOption('2');
  await sender.page.getByRole('button', { name: 'Cases' }).click();
  await sender.page.getByRole('button', { name: 'Copy a link to this case' }).click();
  const address = await sender.page.getByRole('dialog').locator('input[readonly]').inputValue();

  const { page, complaints } = await playground.open({ viewport: PHONE });
  await page.goto(address);
  await page.getByText('Opened from a link').waitFor();
  const suspect = page.locator('#car').getByLabel('Misfires on', { exact: true });
  expect(await suspect.inputValue()).toBe('2');

  await page.getByText('Record something already done').first().click();
  await page.getByLabel('Find a test or repair').fill('cranking compression');
  await page.locator('#next li button.name').first().click();
  const form = page.locator('#next details[open]');
  await form.getByRole('button', { name: 'Enter the numbers' }).click();
  expect(await form.getByLabel('Misfires on').inputValue()).toBe('2');
  expect(await form.getByLabel(/^Cyl\. /).count()).toBe(3);
  for (const [cylinder, text] of ['12.4', '9.1', '12.1'].entries())
    await form.getByLabel(`Cyl. ${cylinder + 1}`).fill(text);
  await form.getByRole('button', { name: 'Record these numbers' }).click();
  await page.locator('#notes').getByText('9.1 bar on cylinder 2').waitFor();
  await suspect.selectOption('3');
  await page.getByText("retract 'r1' first").waitFor();
  expect(await suspect.inputValue()).toBe('2');
  expect(complaints).toEqual([]);
});
