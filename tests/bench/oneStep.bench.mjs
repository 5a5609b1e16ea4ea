// How long the one-step advice takes, in Node and in Chromium, as it is and as a ratio to the ranking alone in the same run:
//   node tests/bench/oneStep.bench.mjs [rounds, default 5]
// Needs a built repository (npm run build). Prints figures; asserts nothing about the clock.
import { loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import { launchOptions } from '../../.tools/browser.mjs';
import { oneStepRounds } from './oneStepRounds.mjs';

const rounds = Number(process.argv[2] ?? 5);
const entry = fileURLToPath(new URL('./oneStepRounds.mjs', import.meta.url));

/** The same rounds in a page of their own. */
async function inChromium() {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    define: { 'process.env.NODE_ENV': '"production"' },
    build: { write: false, lib: { entry, formats: ['iife'], name: 'bench' } },
  });
  const [{ output }] = [built].flat();
  const browser = await chromium.launch(launchOptions());
  try {
    const page = await browser.newPage();
    await page.addScriptTag({ content: output[0].code });
    return await page.evaluate((count) => Reflect.get(globalThis, 'bench').oneStepRounds(count), rounds);
  } finally {
    await browser.close();
  }
}

/** @param {string} where @param {Record<string, number[]>} times */
function print(where, times) {
  const at = (values, share) =>
    [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))];
  const baseline = at(times['ranking alone (baseline)'], 0.5);
  console.log(`${where}, ${times.both.length} updates`);
  for (const [name, taken] of Object.entries(times)) {
    const [median, ninetyFive, slowest] = [0.5, 0.95, 1].map((share) => at(taken, share).toFixed(2));
    const ratio = (Number(median) / baseline).toFixed(1);
    console.log(`  ${name}: median ${median} ms (ratio ${ratio}), 95 % ${ninetyFive} ms, slowest ${slowest} ms`);
  }
}

console.log(`load of the machine before: ${loadavg()[0]?.toFixed(1)}`);
print(`Node ${process.version}`, oneStepRounds(rounds));
print('Chromium', await inChromium());
