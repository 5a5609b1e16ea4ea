import { expect, test } from 'vitest';
import { boundsOfPlaces, boundsOfProblems, SEED } from './boundsOfProblems.ts';
import { storeResults } from './storeResults.ts';

test('on 3000 random problems, and at every place of 250, the bounds hold; the sums are stored', () => {
  const blocks = boundsOfProblems(30);
  const problemsWalked = 250;
  const { places, higher } = boundsOfPlaces(problemsWalked);
  expect(places).toBeGreaterThan(10_000);
  expect(higher).toBeGreaterThan(places / 20);
  storeResults('boundsOfProblems', { seed: SEED, problemsWalked, places, higher, blocks });
});
