import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { PHONE, servePlayground, type Playground } from './openPlayground.ts';

/** Ceiling of the scripts a first visit needs before it can be used, gzip, bytes. */
const CEILING = 155_000;

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

test('the scripts the page starts with stay under 155 kB gzip', async () => {
  const html = readFileSync(fileURLToPath(new URL('../../playground/dist/index.html', import.meta.url)), 'utf8');
  const scripts = [...html.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map(([, name]) => name!);
  expect(scripts.length).toBeGreaterThan(1);
  const sizeOf = (name: string): number =>
    gzipSync(readFileSync(fileURLToPath(new URL(`../../playground/dist/${name}`, import.meta.url)))).length;
  const total = scripts.reduce((sum, name) => sum + sizeOf(name), 0);
  expect(total).toBeLessThan(CEILING);

  // and nothing else is asked for as script before the first answer can be given, but what keeps the page offline and works aside
  const { page } = await playground.open({ viewport: PHONE });
  const asked = await page.evaluate(() =>
    performance.getEntriesByType('resource').map(({ name }) => name.split('/assets/')[1] ?? ''),
  );
  const late = asked.filter((name) => name.endsWith('.js') && !scripts.includes(`assets/${name}`));
  expect(late.filter((name) => !/^(workbox|answer\.worker)/.test(name))).toEqual([]);
});

test('nothing of the page is script or style in its own text, and its policy allows none', async () => {
  const { page, complaints } = await playground.open();
  const policy = await page.locator('meta[http-equiv=Content-Security-Policy]').getAttribute('content');
  expect(policy).toMatch(/default-src 'none'/);
  expect(policy).not.toMatch(/unsafe|\*|https?:/);
  const ran = await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'globalThis.ran = true';
    document.head.append(script);
    return 'ran' in globalThis;
  });
  expect(ran).toBe(false);
  expect(complaints.filter((text) => !/inline script/.test(text))).toEqual([]);
});
