import { expect, test } from 'vitest';
import { boundsOfStates, boundsOfProblems, SEED } from './boundsOfProblems.ts';
import { storeResults } from './storeResults.ts';

test('on 3000 random problems, and at every state of 250, the bounds hold; the sums are stored', () => {
  const blocks = boundsOfProblems(30);
  const problemsWalked = 250;
  const { states, higher } = boundsOfStates(problemsWalked);
  expect(states).toBeGreaterThan(10_000);
  expect(higher).toBeGreaterThan(states / 20);
  storeResults('boundsOfProblems', { seed: SEED, problemsWalked, states, higher, blocks });
});
