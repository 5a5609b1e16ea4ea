import { afterAll, beforeAll, expect, test } from 'vitest';
import { leaders, PHONE, replay, servePlayground, type Playground } from './openPlayground.ts';
import { readDownload } from './readDownload.ts';

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

test('describe the car, record results, read the advice with its price, take back, undo, export, import, reload', async () => {
  const { page, complaints, strangers } = await playground.open({ viewport: PHONE, acceptDownloads: true });
  const atStart = await leaders(page);
  expect(atStart).toHaveLength(3);

  // the car
  await page.getByRole('button', { name: 'Car', exact: true }).click();
  await page.getByLabel('When does it misfire?').selectOption({ label: 'Only under load' });
  await expect.poll(() => leaders(page)).not.toEqual(atStart);
  const described = await leaders(page);
  const question = page.locator('.question', { has: page.getByLabel('When does it misfire?') });
  expect(await question.innerText()).toMatch(/\d%\s*→\s*\d/);

  // the advice has a price and futures before anything is done
  await page.getByRole('button', { name: 'Next', exact: true }).click();
  const best = page.locator('#next article.best');
  expect(await best.locator('.price').innerText()).toMatch(/^[\d,.]+ units$/);
  const futures = best.locator('.futures button');
  expect(await futures.count()).toBeGreaterThan(1);
  for (const future of await futures.all())
    expect(await future.innerText()).toMatch(/\d%[\s\S]*from there to a confirmed repair/);

  // what the future promised is what recording it brings
  const promised = await futures.nth(1).locator('.ranked').first().innerText();
  await futures.nth(1).click();
  await expect.poll(() => leaders(page)).not.toEqual(described);
  const recorded = await leaders(page);
  expect(recorded[0]!.replace(/\s+/g, ' ')).toBe(promised.replace(/\s+/g, ' '));

  // the picture has a column for it
  await page.getByRole('button', { name: 'History', exact: true }).click();
  await expect.poll(() => page.getByRole('toolbar').getByRole('button').count()).toBe(3);
  expect(await page.locator('.moment').innerText()).toMatch(/Of 1000 engines like this/);

  // take back, undo, redo
  await page
    .locator('#notes')
    .getByRole('button', { name: /^Take back/ })
    .click();
  await expect.poll(() => leaders(page)).toEqual(described);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => leaders(page)).toEqual(recorded);
  await page.getByRole('button', { name: 'Redo' }).click();
  await expect.poll(() => leaders(page)).toEqual(described);
  await page.getByRole('button', { name: 'Undo' }).click();

  // a name, then out as a file
  await page.getByLabel('Name of this case').fill('Lift four');
  await page.keyboard.press('Tab');
  await page.getByRole('button', { name: 'Cases' }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save this case as a file' }).click(),
  ]);
  const text = (await readDownload(download)).toString();
  expect(JSON.parse(text)).toMatchObject({ format: 'faultodds-case', version: 3 });

  // a new case, and the old one back from the file
  await page.getByRole('button', { name: 'New case' }).click();
  await expect.poll(() => leaders(page)).toEqual(atStart);
  await page.getByRole('button', { name: 'Cases' }).click();
  await page
    .getByRole('dialog')
    .locator('input[type=file]')
    .setInputFiles({
      name: 'case.json',
      mimeType: 'application/json',
      buffer: Buffer.from(text),
    });
  await expect.poll(() => leaders(page)).toEqual(recorded);

  // the device keeps it
  await expect.poll(() => page.getByLabel('Name of this case').inputValue()).toBe('Lift four');
  await page.reload();
  await page.getByRole('heading', { name: 'Most likely now' }).waitFor();
  await expect.poll(() => leaders(page)).toEqual(recorded);
  expect(await page.getByLabel('Name of this case').inputValue()).toBe('Lift four');

  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});

test('what was done before is recorded one thing after the other, from the first screen', async () => {
  const { page, complaints } = await playground.open({ viewport: PHONE, hasTouch: true, isMobile: true });
  await page.getByRole('button', { name: 'Record what has already been done' }).tap();
  const list = page.locator('#next details[open]');
  for (const part of ['Plug', 'Coil', 'Injector']) {
    // what is on record makes way: the next part stands on top
    const first = list.locator('li').first();
    expect(await first.innerText()).toMatch(new RegExp(`^${part} already replaced`));
    await first.getByRole('button').tap();
    await first.getByRole('button', { name: 'Misfire stays' }).tap();
    await list.getByText(new RegExp(`^Recorded: Misfire stays \\(${part} already replaced`)).waitFor();
    await expect
      .poll(() =>
        page
          .locator('#notes')
          .getByText(/already replaced/)
          .count(),
      )
      .toBeGreaterThan(0);
  }
  // a word too many still finds what is meant
  await page.getByLabel('Find a test or repair').fill('compression gauge');
  expect(await list.locator('li').count()).toBeGreaterThan(1);
  for (const name of await list.locator('li').allInnerTexts()) expect(name).toMatch(/compression/i);
  await page.getByLabel('Find a test or repair').fill('xyzzy');
  await page.getByText('Nothing found for “xyzzy”.').waitFor();
  await page.getByRole('button', { name: 'Now', exact: true }).tap();
  expect(await page.getByRole('button', { name: 'Record what has already been done' }).count()).toBe(0);
  expect(complaints).toEqual([]);
});

test('a broken file says what is wrong with it and changes nothing', async () => {
  const { page, complaints } = await playground.open();
  await page.getByLabel('When does it misfire?').selectOption({ label: 'Only at idle' });
  const before = await leaders(page);
  for (const [text, message] of [
    ['{ "format": "faultodds-case", ', /not a JSON file/],
    ['{"format":"something-else","version":1}', /format/],
    [
      '{"format":"faultodds-case","version":1,"id":"x","title":"X","events":[{"kind":"engine-set","cylinders":4,"suspect":6}]}',
      /no cylinder 6/,
    ],
  ] as const) {
    await page.getByRole('button', { name: 'Cases' }).click();
    await page
      .getByRole('dialog')
      .locator('input[type=file]')
      .setInputFiles({
        name: 'broken.json',
        mimeType: 'application/json',
        buffer: Buffer.from(text),
      });
    const alert = page.getByRole('alert');
    await alert.getByText('“broken.json” cannot be opened. Nothing here was changed.').waitFor();
    expect(await alert.innerText()).toMatch(message);
    expect(await leaders(page)).toEqual(before);
    await alert.getByRole('button', { name: 'Close this message' }).click();
  }
  expect(complaints).toEqual([]);
});

test('what a file says that this version has no place for is told and kept, and the rest counts', async () => {
  const { page, complaints } = await playground.open();
  const opened = JSON.stringify({
    format: 'faultodds-case',
    version: 2,
    id: 'from-elsewhere',
    title: 'From elsewhere',
    events: [
      { kind: 'context-set', feature: 'pattern', value: 'load-only' },
      { kind: 'result-recorded', id: 'r1', test: 'test-of-tomorrow', outcome: 'seen' },
    ],
  });
  const before = await leaders(page);
  await page.getByRole('button', { name: 'Cases' }).click();
  await page
    .getByRole('dialog')
    .locator('input[type=file]')
    .setInputFiles({ name: 'case.json', mimeType: 'application/json', buffer: Buffer.from(opened) });
  await page.getByText('test-of-tomorrow').first().waitFor();
  await expect.poll(() => leaders(page)).not.toEqual(before);
  await page.getByRole('button', { name: 'Cases' }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save this case as a file' }).click(),
  ]);
  expect((await readDownload(download)).toString()).toContain('test-of-tomorrow');
  expect(complaints).toEqual([]);
});

test('an invented case is replayed step by step, says that it is invented, and names its cause at the end', async () => {
  const { page, complaints } = await playground.open();
  await page.getByRole('button', { name: 'Cases' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Turbo four, misfire only on hills' }).click();
  const bar = page.getByRole('region', { name: 'Replay of an invented case' });
  expect(await bar.innerText()).toMatch(/Invented case/);
  const seen = [await leaders(page)];
  while (await bar.getByRole('button', { name: 'Next result' }).isEnabled()) {
    await bar.getByRole('button', { name: 'Next result' }).click();
    seen.push(await leaders(page));
  }
  expect(seen.length).toBeGreaterThan(3);
  expect(new Set(seen.map((ranking) => ranking.join())).size).toBeGreaterThan(2);
  expect(await bar.innerText()).toMatch(/The cause was: Ignition coil weak or failed/);
  await bar.getByRole('button', { name: 'Back', exact: true }).click();
  expect(await leaders(page)).toEqual(seen.at(-2));
  expect(complaints).toEqual([]);
});

test('own prices and missing equipment change the advice', async () => {
  const { page, complaints } = await playground.open();
  await page.getByRole('button', { name: 'Settings' }).click();
  await page.getByLabel('Labour per hour').fill('200');
  await page.getByLabel('Currency', { exact: true }).fill('EUR');
  // a judgement of the knowledge until somebody says otherwise, in the currency of the prices
  await page.getByLabel('Needless opening').fill('0');
  await page.getByRole('button', { name: 'Use these prices' }).click();
  await page.getByRole('dialog').getByLabel('Scan tool').uncheck();
  await page.keyboard.press('Escape');
  await expect.poll(() => page.locator('#next .price').first().innerText()).toMatch(/^€/);
  await page.getByText('Needs equipment that is not at hand').click();
  expect(await page.locator('.not-here').innerText()).toMatch(/Scan tool/);
  expect(complaints).toEqual([]);
});

test('outcomes wait until the step stands, which is told; what is better later is a line and no other step', async () => {
  const { page, complaints } = await playground.open({ worksBeside: true });
  const line = page.locator('#next [role=status]').first();
  const outcome = page.locator('#next article.best .futures button, #next article.best .ends button').first();
  const step = () => page.locator('#next article.best h3').innerText();
  // Playwright waits for an element that is enabled: nothing here sleeps
  await outcome.click({ trial: true });
  expect(await outcome.getAttribute('aria-disabled')).toBe('false');
  await expect.poll(() => line.innerText()).not.toMatch(/Looking several steps ahead\. Results/);
  const stands = await step();
  await expect.poll(() => line.innerText(), { timeout: 60_000 }).toMatch(/several steps ahead|Now better by/i);
  expect(await step()).toBe(stands);
  expect(complaints).toEqual([]);
});

test('what is open costs nothing more until it is closed again', async () => {
  const { page, complaints } = await playground.open();
  const notes = page.locator('#notes');
  await notes.getByLabel('Something else is open').selectOption({ label: 'Valve cover off' });
  await notes.getByRole('button', { name: 'Mark as closed: Valve cover off' }).waitFor();
  const more = page.getByRole('button', { name: /more tests/ });
  while (await more.isVisible()) await more.click();
  const row = page.locator('#next article', { hasText: /^\s*Cover off/ }).first();
  expect(await row.innerText()).toMatch(/nothing more to open/);
  const open = await row.locator('.price').innerText();
  await notes.getByRole('button', { name: 'Mark as closed: Valve cover off' }).click();
  await expect.poll(() => row.locator('.price').innerText()).not.toBe(open);
  expect(complaints).toEqual([]);
});

test('a replay is where it was after a reload', async () => {
  const { page, complaints } = await playground.open();
  await replay(page, 5, 2);
  const shown = await leaders(page);
  await page.reload();
  await page.getByText('2 of 4 recorded').waitFor();
  expect(await leaders(page)).toEqual(shown);
  expect(complaints).toEqual([]);
});

test('a browser that keeps nothing says so, and everything else works', async () => {
  const { page } = await playground.open({}, () => {
    Object.defineProperty(globalThis, 'indexedDB', { value: undefined });
  });
  await page.getByRole('alert').getByText('Nothing is saved on this device', { exact: false }).waitFor();
  const before = await leaders(page);
  await page
    .getByRole('button', { name: /^Record:/ })
    .first()
    .click();
  await expect.poll(() => leaders(page)).not.toEqual(before);
});

test('several cases are kept side by side; one is opened again, another deleted', async () => {
  const { page, complaints } = await playground.open();
  const cases = page.getByRole('button', { name: 'Cases' });
  for (const [name, pattern] of [
    ['First', 'Only at idle'],
    ['Second', 'Only under load'],
  ] as const) {
    await page.getByLabel('Name of this case').fill(name);
    await page.keyboard.press('Tab');
    await page.getByLabel('When does it misfire?').selectOption({ label: pattern });
    if (name === 'First') {
      await cases.click();
      await page.getByRole('button', { name: 'New case' }).click();
    }
  }
  const second = await leaders(page);
  await cases.click();
  await page.getByRole('dialog').getByRole('button', { name: 'First', exact: true }).click();
  await expect.poll(() => page.getByLabel('Name of this case').inputValue()).toBe('First');
  expect(await leaders(page)).not.toEqual(second);
  await cases.click();
  await page.getByRole('button', { name: 'Rename, duplicate or delete: Second' }).click();
  await page.getByRole('button', { name: 'Delete: Second', exact: true }).click();
  await expect
    .poll(() => page.getByRole('dialog').getByRole('button', { name: 'Second', exact: true }).count())
    .toBe(0);
  expect(complaints).toEqual([]);
});
