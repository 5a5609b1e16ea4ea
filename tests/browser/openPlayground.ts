import { chromium, type BrowserContextOptions, type Page } from 'playwright-core';
import { inject, onTestFinished } from 'vitest';
import './serveOnce.ts';

/** The built page in a real browser, watched: what it complains about and what it asks of the network. */
interface OpenPage {
  readonly page: Page;
  /** Errors and warnings of the console, uncaught errors, failed requests. */
  readonly complaints: readonly string[];
  /** Addresses asked for that are not this page's own. */
  readonly strangers: readonly string[];
}

/** The built page as it is served, and the browser that all files share. */
export interface Playground {
  readonly address: string;
  /** @param options of the browser; `address` opens the page where something else serves it; with `worksBeside` the page's worker answers: without,
   * what is worked out beside the page never comes, which spares a whole core to tests that do not look at it; with `keepsItself` the whole page is kept on the device to be opened without a network.
   * @param before runs in the page before anything of it. @param heading shown once the page can be used. */
  open(
    options?: BrowserContextOptions & {
      readonly address?: string;
      readonly worksBeside?: boolean;
      readonly keepsItself?: boolean;
    },
    before?: () => void,
    heading?: string,
  ): Promise<OpenPage>;
  close(): Promise<void>;
}

export const PHONE = { width: 360, height: 740 };
export const DESK = { width: 1440, height: 900 };

/** A connection to what `serveOnce` serves. */
export async function servePlayground(): Promise<Playground> {
  const served = inject('served');
  const browser = await chromium.connect(served.browser);
  return {
    address: served.address,
    async open(
      { address = served.address, worksBeside = false, keepsItself = false, ...options } = {},
      before = undefined,
      heading = 'Most likely now',
    ) {
      const context = await browser.newContext({ reducedMotion: 'reduce', viewport: DESK, ...options });
      // a page left open goes on working in the background and slows the tests after it
      onTestFinished(() => context.close());
      context.setDefaultTimeout(120_000); // of every window; slow machines: what should be there is found as soon as it is
      if (!worksBeside) await context.addInitScript(silenceWorkers);
      if (!keepsItself) await context.addInitScript(withoutServiceWorker);
      const page = await context.newPage();
      if (before) await page.addInitScript(before);
      const complaints: string[] = [];
      const strangers: string[] = [];
      page.on('pageerror', (error) => complaints.push(String(error)));
      page.on('console', (message) => {
        if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
      });
      page.on('requestfailed', (request) => {
        // a reload gives up what was still being asked for
        if (request.failure()?.errorText !== 'net::ERR_ABORTED') complaints.push(`failed: ${request.url()}`);
      });
      page.on('request', (request) => {
        const url = request.url();
        if (!url.startsWith(address) && !/^(data|blob):/.test(url)) strangers.push(url);
      });
      await page.goto(address);
      await page.getByRole('heading', { name: heading }).waitFor();
      await opened(page);
      return { page, complaints, strangers };
    },
    close: () => browser.close(),
  };
}

/** The page is drawn, and the case that was open last stands on it. */
export async function opened(page: Page): Promise<void> {
  await page.locator('main:not([aria-busy=true])').waitFor();
}

/** In the page: a worker that takes every question and never answers. */
function silenceWorkers(): void {
  class SilentWorker extends EventTarget {
    onmessage = null;
    postMessage(): void {}
    terminate(): void {}
  }
  Object.defineProperty(globalThis, 'Worker', { value: SilentWorker });
}

/** In the page: a browser that knows no service workers. */
function withoutServiceWorker(): void {
  Reflect.deleteProperty(Navigator.prototype, 'serviceWorker');
}

/** The most likely causes at the head of the page, as "name chance". */
export async function leaders(page: Page): Promise<string[]> {
  const rows = await page.locator('#now ol li').all();
  return Promise.all(
    rows.map(async (row) => `${await row.locator('.name').innerText()} ${await row.locator('.chance').innerText()}`),
  );
}

/** Opens an invented case at a step. @param number of the case in the list, from 1. */
export async function replay(page: Page, number: number, steps: number): Promise<void> {
  await page.getByRole('button', { name: 'Cases' }).click();
  const list = page.getByRole('dialog').getByRole('heading', { name: 'Invented cases to replay' }).locator('xpath=..');
  await list
    .getByRole('listitem')
    .nth(number - 1)
    .getByRole('button')
    .click();
  for (let step = 0; step < steps; step += 1) await page.getByRole('button', { name: 'Next result' }).click();
}
