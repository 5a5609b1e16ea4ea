import { afterAll, beforeAll, expect, test } from 'vitest';
import { killWhileSaving } from './killWhileSaving.ts';
import { servePlayground, type Playground } from './openPlayground.ts';

// Twenty trials, and kills before the page says kept, are in killedWhileSaving.long.ts.

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

test('what the page calls kept is there again after the browser was killed in that very moment', async () => {
  const { trials, listed } = await killWhileSaving(playground.address, 3);
  expect(trials.map(({ killed }) => killed.results.length)).toEqual([1, 2, 1]);
  for (const { killed, again } of trials) expect(again).toEqual(killed);
  expect(listed.map((text) => /Trial \d/.exec(text)?.[0])).toEqual(['Trial 2', 'Trial 1', 'Trial 0']);
});
