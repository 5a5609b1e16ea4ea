import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { leaders, opened, servePlayground, type Playground } from './openPlayground.ts';

// What the page does where the device keeps nothing, or not yet: it draws first, says so, works, and loses nothing.

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

const name = (page: Page) => page.getByLabel('Name of this case');
/** Records that the first test of the list showed its second outcome: after that another test is best. */
const recordBest = (page: Page): Promise<void> =>
  page
    .getByRole('button', { name: /^Record:/ })
    .nth(1)
    .click();

async function begin(page: Page, title: string): Promise<void> {
  await name(page).fill(title);
  await page.keyboard.press('Tab');
  await page.getByLabel('When does it misfire?').selectOption({ label: 'Only at idle' });
  await recordBest(page);
  await page.locator('#notes ol li').first().waitFor();
}

async function listed(page: Page): Promise<string[]> {
  await page.getByRole('button', { name: 'Cases' }).click();
  const names = page.getByRole('dialog').locator('li .name strong');
  await names.first().waitFor();
  return names.allInnerTexts();
}

/** Every question to open a database waits until `answer()` is called in the page. */
function holdStorage(): void {
  const open = IDBFactory.prototype.open;
  const held: (() => void)[] = [];
  let isHeld = true;
  IDBFactory.prototype.open = function (this: IDBFactory, ...asked: Parameters<typeof open>) {
    if (!isHeld) return open.apply(this, asked);
    const promised = {} as Record<string, (event: Event) => void>;
    held.push(() => {
      const request = open.apply(indexedDB, asked);
      Object.defineProperties(promised, {
        result: { get: () => request.result },
        error: { get: () => request.error },
      });
      for (const type of ['onupgradeneeded', 'onsuccess', 'onerror'] as const)
        request[type] = (event: Event) => promised[type]?.(event);
    });
    return promised as unknown as IDBOpenDBRequest;
  };
  Object.assign(globalThis, {
    answer: () => {
      isHeld = false;
      for (const one of held) one();
    },
  });
}

test('storage that never answers: the page is drawn, says so, and everything works', async () => {
  const { page, complaints } = await playground.open({}, holdStorage);
  await page.getByText('its storage does not respond').waitFor();
  await begin(page, 'Unheard');
  expect(await page.locator('#notes').innerText()).toContain('Not saved on this device');
  expect(await listed(page)).toEqual(['Unheard']);
  await page.getByRole('dialog').getByRole('button', { name: 'New case' }).click();
  await expect.poll(() => name(page).inputValue()).toBe('Unnamed case');
  // the case before is still there
  await page.getByRole('button', { name: 'Cases' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Unheard', exact: true }).click();
  expect(complaints).toEqual([]);
});

test('storage that comes late: what was recorded meanwhile is kept, and what lay there is as it was', async () => {
  const first = await playground.open();
  await begin(first.page, 'Earlier');
  await first.page.getByText('Saved on this device.', { exact: true }).waitFor();
  const before = await leaders(first.page);
  const page = await first.page.context().newPage();
  await page.addInitScript(holdStorage);
  await page.goto(playground.address);
  await page.getByText('its storage does not respond').waitFor();
  await begin(page, 'Meanwhile');
  await page.evaluate(() => (Reflect.get(globalThis, 'answer') as () => void)());
  await page.getByText('The saved cases have loaded').waitFor();
  await page.getByText('Saved on this device.', { exact: true }).waitFor();
  expect(await page.getByText('its storage does not respond').count()).toBe(0);
  expect(await name(page).inputValue()).toBe('Meanwhile');
  await expect.poll(() => listed(page).finally(() => page.keyboard.press('Escape'))).toEqual(['Meanwhile', 'Earlier']);
  await page.getByRole('button', { name: 'Cases' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Earlier', exact: true }).click();
  await expect.poll(() => name(page).inputValue()).toBe('Earlier');
  expect(await leaders(page)).toEqual(before);
});

for (const [how, refuse] of [
  [
    'refuses',
    (): void => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('', 'SecurityError');
      };
    },
  ],
  [
    'refuses, with everything else it could keep',
    (): void => {
      for (const one of ['indexedDB', 'localStorage', 'sessionStorage', 'BroadcastChannel'])
        Object.defineProperty(globalThis, one, {
          get() {
            throw new DOMException('', 'SecurityError');
          },
        });
    },
  ],
] as const) {
  test(`a browser that ${how}: the page is drawn, says so, and everything works`, async () => {
    const { page, complaints } = await playground.open({}, refuse);
    await begin(page, 'Unkept');
    await page.getByText('the browser does not let this page store anything').waitFor();
    expect(await listed(page)).toEqual(['Unkept']);
    expect(complaints).toEqual([]);
  });
}

test('a full device: it is said, nothing is lost, and it is kept as soon as there is room', async () => {
  const { page, complaints } = await playground.open({}, () => {
    const put = IDBObjectStore.prototype.put;
    let isFull = true;
    IDBObjectStore.prototype.put = function (...given: Parameters<typeof put>) {
      if (isFull && this.name === 'cases') throw new DOMException('', 'QuotaExceededError');
      return put.apply(this, given);
    };
    Object.assign(globalThis, { makeRoom: () => (isFull = false) });
  });
  await begin(page, 'Squeezed');
  await page.getByText('its storage is full').waitFor();
  await page.evaluate(() => (Reflect.get(globalThis, 'makeRoom') as () => void)());
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'Redo' }).click();
  await page.getByText('Saved on this device.', { exact: true }).waitFor();
  expect(await page.getByText('its storage is full').count()).toBe(0);
  await page.reload();
  await page.locator('#notes ol li').first().waitFor();
  expect(await name(page).inputValue()).toBe('Squeezed');
  expect(complaints).toEqual([]);
});

test('knowledge that does not arrive: it is said, and one tap tries again', async () => {
  const context = await (await playground.open()).page.context().browser()!.newContext({ serviceWorkers: 'block' });
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  await page.route('**/model-*.json', (route) => route.abort());
  await page.goto(playground.address);
  await page.getByText('The causes and tests could not be loaded').waitFor();
  await page.unroute('**/model-*.json');
  await page.route('**/model-*.json', (route) => route.fulfill({ body: '<html>sign in first</html>' }));
  await page.getByRole('button', { name: 'Try again' }).click();
  await page.getByText('could not be loaded').waitFor();
  await page.unroute('**/model-*.json');
  await page.getByRole('button', { name: 'Try again' }).click();
  await page.getByRole('heading', { name: 'Most likely now' }).waitFor();
  await context.close();
});

test('a language whose words do not arrive keeps nobody waiting: the page begins in English', async () => {
  const context = await (
    await playground.open()
  ).page
    .context()
    .browser()!
    .newContext({ serviceWorkers: 'block', locale: 'de-DE' });
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  await page.route(/\/de-[\w-]+\.js/, (route) => route.abort());
  await page.goto(playground.address);
  await page.getByRole('heading', { name: 'Most likely now' }).waitFor();
  await context.close();
});

test('a case deleted from a list that is out of date comes back with Undo as it was last', async () => {
  const deaf = (): void => {
    Object.defineProperty(globalThis, 'BroadcastChannel', { value: undefined });
  };
  const { page } = await playground.open({}, deaf);
  await begin(page, 'Shared');
  await page.getByText('Saved on this device.', { exact: true }).waitFor();
  const other = await page.context().newPage();
  await other.addInitScript(deaf);
  await other.goto(playground.address);
  await expect.poll(() => name(other).inputValue()).toBe('Shared');
  await opened(other);
  await page.bringToFront();
  await page.getByRole('button', { name: 'Cases' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'New case' }).click();
  await page.getByRole('button', { name: 'Cases' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Rename, duplicate or delete: Shared' }).click();
  // the list here does not hear of it
  await other.bringToFront();
  await recordBest(other);
  await other.locator('#notes ol li').nth(1).waitFor();
  await other.getByText('Saved on this device.', { exact: true }).waitFor();
  const newest = await leaders(other);
  await page.bringToFront();
  await dialog.getByRole('button', { name: 'Delete: Shared', exact: true }).click();
  await dialog.getByRole('button', { name: 'Undo' }).click();
  await dialog.getByRole('button', { name: 'Shared', exact: true }).click();
  await expect.poll(() => leaders(page)).toEqual(newest);
});
