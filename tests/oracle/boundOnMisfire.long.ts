import { expect, test } from 'vitest';
import { SEED, TOLERANCE, walkMisfire, WALKED } from './boundOnMisfire.ts';
import { storeResults } from './storeResults.ts';

test('on the misfire model no action lowers the bound by more than it costs; every place is stored', () => {
  const cases = WALKED.map(([id, results]) => ({ id, results, places: walkMisfire(id, results, 3, 5) }));
  for (const { places } of cases)
    for (const { key, bound, excess } of places) expect(excess, key).toBeLessThan(TOLERANCE * bound);
  storeResults('boundOnMisfire', { seed: SEED, cases });
});
