import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type Page } from 'playwright-core';
import { preview } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchOptions } from '../../.tools/browser.mjs';
import { leaders, opened, PHONE, servePlayground, type Playground } from './openPlayground.ts';

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

/** Waits until everything the page needs is kept on the device. */
const kept = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });

test('after the first visit the page opens without a network, with the case and everything loaded late', async () => {
  const { page, complaints, strangers } = await playground.open({ viewport: PHONE, keepsItself: true });
  await kept(page);
  await page.getByLabel('When does it misfire?').selectOption({ label: 'Only under load' });
  const before = await leaders(page);
  await page.context().setOffline(true);
  await page.reload();
  await page.getByRole('heading', { name: 'Most likely now' }).waitFor();
  await opened(page);
  expect(await leaders(page)).toEqual(before);

  await page
    .getByRole('button', { name: /^Record:/ })
    .first()
    .click();
  await expect.poll(() => leaders(page)).not.toEqual(before);
  await page.getByRole('button', { name: 'Cases' }).click();
  await page.getByRole('button', { name: 'Copy a link to this case' }).click();
  expect(await page.getByRole('dialog').locator('input[readonly]').inputValue()).toMatch(/#case=1\./);
  await page.getByRole('button', { name: 'Report of this case' }).click();
  await page.locator('.report').waitFor();
  expect([...complaints, ...strangers]).toEqual([]);
});

test('the page can be installed: a manifest with icons that are what it says they are', async () => {
  const { page } = await playground.open({ keepsItself: true });
  const { manifest, icons } = await page.evaluate(async () => {
    const address = document.querySelector<HTMLLinkElement>('link[rel=manifest]')!.href;
    const manifest = await (await fetch(address)).json();
    const icons: string[] = [];
    for (const { src } of manifest.icons) {
      const picture = new Image();
      picture.src = new URL(src, address).href;
      await picture.decode();
      icons.push(`${picture.naturalWidth}x${picture.naturalHeight}`);
    }
    return { manifest, icons };
  });
  expect(manifest).toMatchObject({ name: 'faultodds', start_url: './', scope: './', display: 'standalone' });
  expect(icons.slice(1)).toEqual(manifest.icons.slice(1).map(({ sizes }: { sizes: string }) => sizes));
  expect(manifest.icons.some(({ purpose }: { purpose?: string }) => purpose === 'maskable')).toBe(true);
});

/** A copy of the built page under a path of its own, which the test may change like a new release would. */
async function hostCopy(base: string): Promise<{ address: string; folder: string; close(): Promise<void> }> {
  const root = mkdtempSync(join(tmpdir(), 'host-'));
  const folder = join(root, 'page');
  cpSync(fileURLToPath(new URL('../../playground/dist', import.meta.url)), folder, { recursive: true });
  const server = await preview({
    root,
    base,
    configFile: false,
    logLevel: 'warn',
    build: { outDir: 'page' },
    preview: { port: 0, host: '127.0.0.1' },
  });
  return {
    address: server.resolvedUrls!.local[0]!,
    folder,
    async close() {
      await server.close();
      rmSync(root, { recursive: true });
    },
  };
}

test('under any path of any host the page works, and a newer version is offered with its number, not forced', async () => {
  const host = await hostCopy('/some/where/');
  const browser: Browser = await chromium.launch(launchOptions());
  try {
    const context = await browser.newContext({ viewport: PHONE, reducedMotion: 'reduce' });
    const page = await context.newPage();
    const failed: string[] = [];
    // what is still on its way when the page is left is ended with it
    page.on('requestfailed', (request) => {
      if (request.failure()?.errorText !== 'net::ERR_ABORTED') failed.push(request.url());
    });
    page.on('response', (response) => response.status() >= 400 && failed.push(response.url()));
    await page.goto(host.address);
    expect(new URL(page.url()).pathname).toBe('/some/where/');
    await page.getByRole('heading', { name: 'Most likely now' }).waitFor();
    await kept(page);
    await page.getByLabel('When does it misfire?').selectOption({ label: 'Only under load' });
    const before = await leaders(page);

    // a release: the page changes, its worker names another revision, the version file another number
    const change = (file: string, edit: (text: string) => string): void =>
      writeFileSync(join(host.folder, file), edit(readFileSync(join(host.folder, file), 'utf8')));
    change('index.html', (text) => text.replace('<title>', '<meta name="release" content="next" /><title>'));
    change('sw.js', (text) => text.replace(/("?url"?:"index\.html","?revision"?:"|"?revision"?:")([0-9a-f])/, '$1f$2'));
    change('version.json', () => JSON.stringify({ version: '9.9.9', build: 'next' }));

    await page.reload();
    const prompt = page.getByRole('status', { name: 'Newer version' });
    await prompt.waitFor();
    expect(await prompt.innerText()).toMatch(/9\.9\.9, build next; this is \d+\.\d+\.\d+, build [\w-]+/);
    expect(await page.locator('meta[name=release]').count()).toBe(0);
    await prompt.getByRole('button', { name: 'Use it now' }).click();
    await page.locator('meta[name=release]').waitFor({ state: 'attached' });
    await page.getByRole('heading', { name: 'Most likely now' }).waitFor();
    expect(await leaders(page)).toEqual(before);
    expect(failed).toEqual([]);
  } finally {
    await browser.close();
    await host.close();
  }
});
