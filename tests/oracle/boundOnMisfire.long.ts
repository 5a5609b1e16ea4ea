import { expect, test } from 'vitest';
import { SEED, TOLERANCE, walkMisfire, WALKED } from './boundOnMisfire.ts';
import { storeResults } from './storeResults.ts';

test('on the misfire model no action lowers the bound by more than it costs; every state is stored', () => {
  const cases = WALKED.map(([id, results]) => ({ id, results, states: walkMisfire(id, results, 3, 5) }));
  for (const { states } of cases)
    for (const { key, bound, excess } of states) expect(excess, key).toBeLessThan(TOLERANCE * bound);
  storeResults('boundOnMisfire', { seed: SEED, cases });
});
