// What it costs to explain one more result in a case that has 200, in Node and in Chromium, as it is and as a ratio to the ranking alone in the
// same run: node tests/bench/explanation.bench.mjs [further results, default 30]
// Needs a built repository (npm run build). Prints and stores figures; asserts nothing about the clock.
import { fileURLToPath } from 'node:url';
import { explanationRounds } from './explanationRounds.mjs';
import { inChromium } from './inChromium.mjs';
import { storeTimes } from './storeTimes.mjs';

const count = Number(process.argv[2] ?? 30);
const entry = fileURLToPath(new URL('./explanationRounds.mjs', import.meta.url));

storeTimes('explanation', {
  Node: explanationRounds(count),
  Chromium: await inChromium(entry, 'explanationRounds', [count]),
});
