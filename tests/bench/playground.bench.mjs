// How soon the built page can be used, and whether it keeps up with fingers: node tests/bench/playground.bench.mjs, after `npm run build`.
// Each run starts a browser of its own with an empty profile. Prints figures and stores them; asserts nothing about the clock.
import { writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { launchOptions } from '../../.tools/browser.mjs';

const RUNS = 5;
const SIZES = { phone: { width: 360, height: 740 }, desk: { width: 1440, height: 900 } };
const root = fileURLToPath(new URL('../../playground', import.meta.url));
const server = await preview({ root, logLevel: 'warn', preview: { port: 0, host: '127.0.0.1' } });
const address = server.resolvedUrls?.local[0] ?? '';

/** Runs in the page before anything of it: notes when a ranking stands there with a control that works, and every task above 50 ms. */
function watch() {
  const seen = { usable: 0, longest: 0, slowest: 0 };
  Object.assign(globalThis, { seen });
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) seen.longest = Math.max(seen.longest, duration);
  }).observe({ type: 'longtask', buffered: true });
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) seen.slowest = Math.max(seen.slowest, duration);
  }).observe(/** @type {PerformanceObserverInit} */ ({ type: 'event', durationThreshold: 16 }));
  const look = () => {
    const isThere = document.querySelector('#now ol li .chance') && document.querySelector('#app button:enabled');
    if (isThere) seen.usable = performance.now();
    else requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

/** @param {import('playwright-core').Page} page @returns {Promise<{ usable: number, longest: number, slowest: number }>} */
const seenIn = (page) => page.evaluate(() => ({ ...Reflect.get(globalThis, 'seen') }));
/** @param {import('playwright-core').Page} page */
const forget = (page) =>
  page.evaluate(() => void Object.assign(Reflect.get(globalThis, 'seen'), { longest: 0, slowest: 0 }));
/** @param {import('playwright-core').Page} page @param {string} doing @returns {Promise<{ longest: number, slowest: number }>} */
async function told(page, doing) {
  await page.waitForTimeout(300);
  const { longest, slowest } = await seenIn(page);
  const task = longest === 0 ? 'no task above 50 ms' : `longest task ${longest.toFixed(0)} ms`;
  console.log(
    `  ${doing}: ${task}, slowest answer to a key or finger ${slowest === 0 ? 'below 16' : slowest.toFixed(0)} ms`,
  );
  await forget(page);
  return { longest, slowest };
}

/** @param {{ width: number, height: number }} viewport */
async function fresh(viewport) {
  const browser = await chromium.launch(launchOptions());
  const page = await (await browser.newContext({ viewport, locale: 'en' })).newPage();
  await page.addInitScript(watch);
  await page.goto(address);
  await page.waitForFunction(() => Reflect.get(globalThis, 'seen').usable > 0);
  return { browser, page };
}

/** @typedef {{ longest: number, slowest: number }} Seen */
/** @type {Record<string, { usable: number[], recording: Seen, moving: Seen }>} */
const sizes = {};
try {
  console.log(`load of the machine before: ${loadavg()[0]?.toFixed(1)}`);
  for (const [size, viewport] of Object.entries(SIZES)) {
    const times = [];
    for (let run = 0; run < RUNS; run += 1) {
      const { browser, page } = await fresh(viewport);
      times.push((await seenIn(page)).usable);
      await browser.close();
    }
    times.sort((a, b) => a - b);
    const [least, middle, most] = [times[0], times[RUNS >> 1], times[RUNS - 1]].map((ms) => (ms ?? 0).toFixed(0));
    console.log(
      `${size}: a ranking and a control to use after ${middle} ms (median of ${RUNS} cold starts, ${least} to ${most})`,
    );

    const { browser, page } = await fresh(viewport);
    await page.getByRole('button', { name: 'Cases' }).click();
    const list = page.getByRole('heading', { name: 'Invented cases to replay' }).locator('xpath=..');
    await list.getByRole('listitem').nth(6).getByRole('button').click();
    await forget(page);
    for (let step = 0; step < 6; step += 1) await page.getByRole('button', { name: 'Next result' }).click();
    const recording = await told(page, 'six results recorded');
    await page
      .getByLabel('Name of this case')
      .pressSequentially(' typed while the page works out how sure it is', { delay: 30 });
    await page.keyboard.press('Tab');
    const moving = [await told(page, 'typing, a worker busy')];
    await page.getByRole('button', { name: 'Check the numbers' }).click();
    const slider = page.getByRole('dialog').getByRole('slider').first();
    await slider.waitFor();
    await forget(page);
    const box = await slider.boundingBox();
    if (box === null) throw new RangeError('the slider has no box');
    const y = box.y + box.height / 2;
    await page.mouse.move(box.x + 12, y);
    await page.mouse.down();
    for (let at = 0; at <= 60; at += 1) await page.mouse.move(box.x + 12 + ((box.width - 24) * at) / 60, y);
    await page.mouse.up();
    moving.push(await told(page, 'dragging a slider'));
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Look further ahead' }).click();
    await page.getByRole('button', { name: 'Compute the whole plan' }).click();
    await forget(page);
    for (let turn = 0; turn < 20; turn += 1) {
      await page.mouse.wheel(0, 200);
      await page.waitForTimeout(100);
    }
    moving.push(await told(page, 'scrolling while a plan is looked for'));
    sizes[size] = {
      usable: times,
      recording,
      moving: {
        longest: Math.max(...moving.map(({ longest }) => longest)),
        slowest: Math.max(...moving.map(({ slowest }) => slowest)),
      },
    };
    await browser.close();
  }
  console.log(`load of the machine after: ${loadavg()[0]?.toFixed(1)}`);
  const machine = { cpu: cpus()[0]?.model, cores: cpus().length, node: process.version };
  writeFileSync(
    new URL('results/playground.json', import.meta.url),
    `${JSON.stringify({ machine, sizes }, undefined, 2)}\n`,
  );
} finally {
  await server.close();
}
