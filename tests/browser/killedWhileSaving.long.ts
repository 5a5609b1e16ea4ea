import { afterAll, beforeAll, expect, test } from 'vitest';
import { killWhileSaving } from './killWhileSaving.ts';
import { servePlayground, type Playground } from './openPlayground.ts';

const TRIALS = 20;

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

test('twenty kills, each in the moment in which a test result is called kept: nothing is lost', async () => {
  const { trials, listed } = await killWhileSaving(playground.address, TRIALS);
  for (const { killed, again } of trials) expect(again).toEqual(killed);
  expect(trials.filter(({ killed }) => killed.results.length === 2)).toHaveLength(TRIALS / 2);
  expect(listed).toHaveLength(TRIALS);
});

test('killed already when the row stands there: the last result is there whole or not at all, and all before it is kept', async () => {
  const { trials, listed } = await killWhileSaving(playground.address, TRIALS, 'row');
  const whole = trials.filter(({ killed, again }) => again.results.length === killed.results.length).length;
  console.log(`killed before the page said kept: the last result was there again ${whole} times of ${TRIALS}`);
  for (const { earlier, killed, again } of trials) expect([earlier, killed]).toContainEqual(again);
  expect(listed).toHaveLength(TRIALS);
});
