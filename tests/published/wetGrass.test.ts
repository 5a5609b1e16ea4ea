import { expect, test } from 'vitest';
import { chanceOf, chanceOfEvidence, yesNoNetwork } from './yesNo.ts';

// Wet grass with three nodes, as in the manual of the R package gRain (data set grass) and many texts, which print 0.3577. Tables seen
// in a stored public copy, posterior recomputed: 891/2491. Check B5. Tolerance 1e-12.
test('it rained with probability 891/2491 when the grass is wet (B5)', () => {
  const grass = yesNoNetwork([
    ['rain', [], [0.2]],
    ['sprinkler', ['rain'], [0.01, 0.4]],
    ['wet', ['sprinkler', 'rain'], [0.99, 0.9, 0.8, 0]],
  ]);
  expect(chanceOfEvidence(grass, { wet: 'yes' })).toBeCloseTo(0.44838, 12);
  expect(chanceOf(grass, 'rain', { wet: 'yes' })).toBeCloseTo(891 / 2491, 12);
});
