// What it costs to explain one more result in a case that has 200, in Node and in Chromium, as it is and as a ratio to the ranking alone in the
// same run: node tests/bench/explanation.bench.mjs [further results, default 30]
// Needs a built repository (npm run build). Prints figures; asserts nothing about the clock.
import { loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';
import { explanationRounds } from './explanationRounds.mjs';
import { inChromium } from './inChromium.mjs';
import { printTimes } from './printTimes.mjs';

const count = Number(process.argv[2] ?? 30);
const entry = fileURLToPath(new URL('./explanationRounds.mjs', import.meta.url));

console.log(`load of the machine before: ${loadavg()[0]?.toFixed(1)}`);
printTimes(`Node ${process.version}`, explanationRounds(count));
printTimes('Chromium', await inChromium(entry, 'explanationRounds', [count]));
