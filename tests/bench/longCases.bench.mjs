// What full shelves and long cases take of the page's own thread: node tests/bench/longCases.bench.mjs, after `npm run build`.
// Processor time of that thread, as ratios to drawing the empty page in the same run. Prints figures; asserts nothing about the clock.
import { loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';
import { misfire } from '@faultodds/misfire';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { launchOptions } from '../../.tools/browser.mjs';

const RUNS = 3;
/** Counts from nothing: a page that is made begins its count anew. */
const BASELINE = 'drawing the empty page';
const KEPT = 1000;
const EVENTS = 2000;
const RESULTS = 200;

const root = fileURLToPath(new URL('../../playground', import.meta.url));
const server = await preview({ root, logLevel: 'warn', preview: { port: 0, host: '127.0.0.1' } });
const address = server.resolvedUrls?.local[0] ?? '';

const always = misfire.tests.filter(({ appliesWhen }) => appliesWhen === undefined);
/** @param {number} at */
function result(at) {
  const { id, outcomes } = /** @type {typeof always[number]} */ (always[at % always.length]);
  const likelihood = Object.fromEntries(outcomes.map((outcome, nth) => [outcome.id, nth === at % 2 ? 1 : 0.9]));
  return { kind: 'result-recorded', id: `r${at}`, test: id, likelihood };
}
/** @param {string} id @param {number} events @param {number} results */
function keptCase(id, events, results) {
  const title = `Invented ${id}`;
  const every = Math.floor(events / results);
  const document = {
    format: 'faultodds-case',
    version: 3,
    id,
    title,
    events: Array.from({ length: events }, (_, at) =>
      at % every === 0 ? result(at / every) : { kind: 'note-added', text: `Remark ${at}` },
    ),
  };
  return { id, title, document, revision: 'one', changed: id.length };
}

/** Puts cases where the page keeps them. @param {import('playwright-core').Page} page @param {unknown[]} cases */
const putOnDevice = (page, cases) =>
  page.evaluate(
    (cases) =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('faultodds');
        // nothing was kept here yet
        opening.onupgradeneeded = () => opening.result.createObjectStore('cases');
        opening.onsuccess = () => {
          const writing = opening.result.transaction('cases', 'readwrite');
          for (const one of cases) writing.objectStore('cases').put(one, /** @type {{ id: string }} */ (one).id);
          writing.oncomplete = () => resolve(undefined);
          writing.onerror = () => reject(writing.error);
        };
      }),
    cases,
  );

/** @type {Record<string, number[]>} */
const taken = {};
/** Processor time of the page's thread while something is done. @param {import('playwright-core').CDPSession} session
 * @param {string} what @param {() => Promise<unknown>} doing */
async function measure(session, what, doing) {
  const spent = async () => {
    const { metrics } = await session.send('Performance.getMetrics');
    return metrics.find(({ name }) => name === 'TaskDuration')?.value ?? NaN;
  };
  const before = what === BASELINE ? 0 : await spent();
  await doing();
  (taken[what] ??= []).push(1000 * ((await spent()) - before));
}

try {
  console.log(`load of the machine before: ${loadavg()[0]?.toFixed(1)}`);
  for (let run = 0; run < RUNS; run += 1) {
    const browser = await chromium.launch(launchOptions());
    const page = await browser.newPage({ locale: 'en' });
    page.setDefaultTimeout(120_000);
    const session = await page.context().newCDPSession(page);
    await session.send('Performance.enable', { timeDomain: 'threadTicks' });
    const drawn = page.locator('main:not([aria-busy=true]) #now ol li .chance').first();
    await measure(session, BASELINE, async () => {
      await page.goto(address);
      await drawn.waitFor();
    });
    await putOnDevice(page, [keptCase('long', EVENTS, RESULTS)]);
    await putOnDevice(
      page,
      Array.from({ length: KEPT }, (_, at) => keptCase(`case-${at}`, 24, 8)),
    );
    const dialog = page.getByRole('dialog');
    await measure(session, `listing ${KEPT} kept cases`, async () => {
      await page.getByRole('button', { name: 'Cases' }).click();
      await dialog.locator('li .name').nth(39).waitFor();
    });
    await dialog.getByRole('searchbox').fill('Invented long');
    await measure(session, `opening a case of ${EVENTS} events, ${RESULTS} of them results`, async () => {
      await dialog.getByRole('button', { name: 'Invented long', exact: true }).click();
      await page.locator('#notes ol li').nth(39).waitFor();
    });
    await browser.close();
  }
  const middle = (/** @type {number[]} */ times) => times.toSorted((a, b) => a - b)[times.length >> 1] ?? NaN;
  const [[baseline, base] = ['', []], ...others] = Object.entries(taken);
  console.log(`${baseline}: ${middle(base).toFixed(0)} ms of processor time (median of ${RUNS}), the baseline`);
  for (const [what, times] of others) {
    const ratios = times.map((time) => time / middle(base));
    const [least, most] = [Math.min(...ratios), Math.max(...ratios)].map((ratio) => ratio.toFixed(2));
    console.log(`${what}: ${middle(ratios).toFixed(2)} times the baseline (${least} to ${most})`);
  }
} finally {
  await server.close();
}
