import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DESK, leaders, opened, PHONE, replay, servePlayground, type Playground } from './openPlayground.ts';

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

const heading = (page: Page) => page.getByRole('heading', { name: 'Most likely now' });
const nameOf = (page: Page): Promise<string> => page.getByLabel('Name of this case').inputValue();
const answer = async (page: Page, label: string): Promise<void> => {
  await page.getByLabel('When does it misfire?').selectOption({ label });
};

async function startCase(page: Page, name: string, pattern: string): Promise<void> {
  await page.getByRole('button', { name: 'Cases' }).click();
  await page.getByRole('button', { name: 'New case' }).click();
  await page.getByLabel('Name of this case').fill(name);
  await page.keyboard.press('Tab');
  await answer(page, pattern);
}

async function kept(page: Page): Promise<string[]> {
  return page.getByRole('dialog').locator('li .name strong').allInnerTexts();
}

async function linkOf(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Cases' }).click();
  await page.getByRole('button', { name: 'Copy a link to this case' }).click();
  const address = await page.getByRole('dialog').locator('input[readonly]').inputValue();
  await page.keyboard.press('Escape');
  return address;
}

for (const [size, viewport] of [
  ['a phone', PHONE],
  ['a desk', DESK],
] as const) {
  test(`a link carries a case to another device, and what was open there stays (${size})`, async () => {
    const sender = await playground.open({ viewport });
    await startCase(sender.page, 'Sent along', 'Only under load');
    await sender.page
      .getByRole('button', { name: /^Record:/ })
      .first()
      .click();
    const sent = await leaders(sender.page);
    const address = await linkOf(sender.page);

    const { page, complaints, strangers } = await playground.open({ viewport });
    await startCase(page, 'Mine', 'Only at idle');
    await page.goto(address);
    await page.getByText('Opened from a link').waitFor();
    expect(await leaders(page)).toEqual(sent);
    expect(await nameOf(page)).toBe('Sent along');
    expect(page.url()).not.toContain('#case');
    await page.reload();
    await heading(page).waitFor();
    await opened(page);
    expect(await nameOf(page)).toBe('Sent along');
    await page.getByRole('button', { name: 'Cases' }).click();
    expect((await kept(page)).sort()).toEqual(['Mine', 'Sent along']);
    expect([...complaints, ...strangers]).toEqual([]);
  });
}

test('a broken link says what is wrong with it and keeps what is there', async () => {
  const { page, complaints } = await playground.open();
  await startCase(page, 'Mine', 'Only at idle');
  const before = await leaders(page);
  const address = await linkOf(page);
  for (const [broken, why] of [
    [address.slice(0, -20), /damaged: cut off, or changed on the way/],
    [address.replace('#case=1.', '#case=7.'), /another version of this page/],
    [`${address.split('#')[0]}#case=1.`, /cut off/],
  ] as const) {
    await page.evaluate((hash) => (location.hash = hash), `#${broken.split('#')[1]}`);
    const alert = page.getByRole('alert');
    await alert.getByText('The link does not contain a case').waitFor();
    expect(await alert.innerText()).toMatch(why);
    expect(await leaders(page)).toEqual(before);
    expect(await nameOf(page)).toBe('Mine');
    await alert.getByRole('button', { name: 'Close this message' }).click();
  }
  expect(complaints).toEqual([]);
});

test('cases are found, renamed, copied, deleted and put back', async () => {
  const { page, complaints } = await playground.open({ viewport: PHONE });
  for (const name of ['Ash', 'Birch', 'Cedar', 'Elm', 'Fir', 'Hazel']) await startCase(page, name, 'Only at idle');
  await page.getByRole('button', { name: 'Cases' }).click();
  const dialog = page.getByRole('dialog');
  await expect.poll(() => kept(page)).toEqual(['Hazel', 'Fir', 'Elm', 'Cedar', 'Birch', 'Ash']);

  await dialog.getByLabel('Find a case').fill('ced');
  expect(await kept(page)).toEqual(['Cedar']);
  await dialog.getByLabel('Find a case').fill('nothing like it');
  await dialog.getByText('No case matches “nothing like it”').waitFor();
  await dialog.getByLabel('Find a case').fill('');

  await dialog.getByRole('button', { name: 'Rename, duplicate or delete: Cedar' }).click();
  await dialog.getByRole('button', { name: 'Rename: Cedar' }).click();
  await dialog.getByLabel('New name for Cedar').fill('Deodar');
  await dialog.getByRole('button', { name: 'Save name' }).click();
  await expect.poll(() => kept(page)).toContain('Deodar');

  await dialog.getByRole('button', { name: 'Duplicate: Deodar' }).click();
  await expect.poll(() => kept(page)).toContain('Copy of Deodar');

  await dialog.getByRole('button', { name: 'Delete: Deodar', exact: true }).click();
  await expect.poll(() => kept(page)).not.toContain('Deodar');
  await dialog.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => kept(page)).toContain('Deodar');

  // the open one as well: a new one takes its place, and comes back with Undo
  await dialog.getByRole('button', { name: 'Rename, duplicate or delete: Hazel' }).click();
  await dialog.getByRole('button', { name: 'Delete: Hazel', exact: true }).click();
  await expect.poll(() => kept(page)).not.toContain('Hazel');
  await page.keyboard.press('Escape');
  expect(await nameOf(page)).toBe('Unnamed case');
  await page.getByRole('button', { name: 'Cases' }).click();
  await dialog.getByRole('button', { name: 'Undo' }).click();
  await dialog.getByRole('button', { name: 'Hazel', exact: true }).click();
  await expect.poll(() => nameOf(page)).toBe('Hazel');
  expect(complaints).toEqual([]);
});

test('a name is typed in a replayed case and a button tapped at once: the name is kept and the tap counts', async () => {
  for (const options of [{ viewport: DESK }, { viewport: PHONE, hasTouch: true, isMobile: true }]) {
    const { page, complaints } = await playground.open(options);
    await replay(page, 7, 3);
    await page.getByLabel('Name of this case').fill('Lift four');
    const press = page.getByRole('button', { name: 'Look further ahead' });
    if (options.viewport === PHONE) await press.tap();
    else await press.click();
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
    expect(await nameOf(page)).toBe('Lift four');
    await page.getByRole('button', { name: 'Cases' }).click();
    expect(await kept(page)).toContain('Lift four');
    expect(complaints).toEqual([]);
  }
});

test('two windows with the same case keep in step', async () => {
  const { page, complaints } = await playground.open();
  await startCase(page, 'Shared', 'Only at idle');
  const other = await page.context().newPage();
  await other.goto(playground.address);
  await expect.poll(() => nameOf(other)).toBe('Shared');
  await other
    .getByRole('button', { name: /^Record:/ })
    .first()
    .click();
  const recorded = await leaders(other);
  await page.getByText('was changed in another window').waitFor();
  expect(await leaders(page)).toEqual(recorded);
  // and what is done here now builds on it
  await page.bringToFront();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => leaders(other)).not.toEqual(recorded);
  expect(await leaders(other)).toEqual(await leaders(page));
  expect(complaints).toEqual([]);
});

test('two windows that do not hear of each other overwrite nothing: both versions are kept', async () => {
  const deaf = (): void => {
    Object.defineProperty(globalThis, 'BroadcastChannel', { value: undefined });
  };
  const { page, complaints } = await playground.open({}, deaf);
  await startCase(page, 'Shared', 'Only at idle');
  const other = await page.context().newPage();
  await other.addInitScript(deaf);
  await other.goto(playground.address);
  await expect.poll(() => nameOf(other)).toBe('Shared');
  await answer(other, 'Only under load');
  const theirs = await leaders(other);
  await page.bringToFront();
  await page
    .getByRole('button', { name: /^Record:/ })
    .first()
    .click();
  await page.getByText('changed in another window at the same moment').waitFor();
  const mine = await leaders(page);
  expect(await nameOf(page)).toBe('Shared (second window)');
  await page.getByRole('button', { name: 'Cases' }).click();
  await expect.poll(async () => (await kept(page)).sort()).toEqual(['Shared', 'Shared (second window)']);
  await page.getByRole('dialog').getByRole('button', { name: 'Shared', exact: true }).click();
  await expect.poll(() => leaders(page)).toEqual(theirs);
  expect(mine).not.toEqual(theirs);
  expect(complaints).toEqual([]);
});

test('each window comes back with the case it had open', async () => {
  const { page } = await playground.open();
  await startCase(page, 'First', 'Only at idle');
  const other = await page.context().newPage();
  await other.goto(playground.address);
  await heading(other).waitFor();
  await startCase(other, 'Second', 'Only under load');
  await page.bringToFront();
  await page.reload();
  await heading(page).waitFor();
  await opened(page);
  expect(await nameOf(page)).toBe('First');
});

test('prices chosen once hold for the next case too', async () => {
  const { page } = await playground.open();
  await page.getByRole('button', { name: 'Settings' }).click();
  await page.getByLabel('Labour per hour').fill('95');
  await page.getByLabel('Currency', { exact: true }).fill('EUR');
  await page.getByRole('button', { name: 'Use these prices' }).click();
  await page.keyboard.press('Escape');
  await startCase(page, 'Next one', 'Only at idle');
  expect(await page.locator('#next .price').first().innerText()).toMatch(/^€/);
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await page.locator('#next .price').first().innerText()).toMatch(/^€/);
});
