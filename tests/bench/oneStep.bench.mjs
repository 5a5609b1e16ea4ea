// How long the one-step advice takes, in Node and in Chromium, as it is and as a ratio to the ranking alone in the same run:
//   node tests/bench/oneStep.bench.mjs [rounds, default 5]
// Needs a built repository (npm run build). Prints and stores figures; asserts nothing about the clock.
import { fileURLToPath } from 'node:url';
import { inChromium } from './inChromium.mjs';
import { oneStepRounds } from './oneStepRounds.mjs';
import { storeTimes } from './storeTimes.mjs';

const rounds = Number(process.argv[2] ?? 5);
const entry = fileURLToPath(new URL('./oneStepRounds.mjs', import.meta.url));

storeTimes('oneStep', {
  Node: oneStepRounds(rounds),
  Chromium: await inChromium(entry, 'oneStepRounds', [rounds]),
});
