import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type BrowserContextOptions, type Page } from 'playwright-core';
import { preview } from 'vite';
import { onTestFinished } from 'vitest';
import { launchOptions } from '../../.tools/browser.mjs';

/** The built page in a real browser, watched: what it complains about and what it asks of the network. */
export interface OpenPage {
  readonly page: Page;
  /** Errors and warnings of the console, uncaught errors, failed requests. */
  readonly complaints: readonly string[];
  /** Addresses asked for that are not this page's own. */
  readonly strangers: readonly string[];
}

/** A running preview of the built playground and a browser. */
export interface Playground {
  readonly address: string;
  /** @param before runs in the page before anything of it. @param heading shown once the page can be used. */
  open(options?: BrowserContextOptions, before?: () => void, heading?: string): Promise<OpenPage>;
  close(): Promise<void>;
}

export const PHONE = { width: 360, height: 740 };
export const DESK = { width: 1440, height: 900 };

/** Serves playground/dist, as a visitor gets it. */
export async function servePlayground(): Promise<Playground> {
  const root = fileURLToPath(new URL('../../playground', import.meta.url));
  if (!existsSync(`${root}/dist/index.html`))
    throw new TypeError('playground/dist is missing: run "npm run build" first');
  const server = await preview({ root, logLevel: 'warn', preview: { port: 0, host: '127.0.0.1' } });
  const address = server.resolvedUrls?.local[0] ?? '';
  const browser: Browser = await chromium.launch(launchOptions());
  return {
    address,
    async open(options = {}, before = undefined, heading = 'Most likely now') {
      const context = await browser.newContext({ reducedMotion: 'reduce', viewport: DESK, ...options });
      // a page left open goes on working in the background and slows the tests after it
      onTestFinished(() => context.close());
      const page = await context.newPage();
      if (before) await page.addInitScript(before);
      page.setDefaultTimeout(120_000); // slow machines; what should be there is found as soon as it is
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
      return { page, complaints, strangers };
    },
    async close() {
      await browser.close();
      await server.close();
    },
  };
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
