import { describe, expect, test } from 'vitest';
import { chanceOf, chanceOfEvidence, yesNoNetwork } from './yesNo.ts';

// The burglar alarm: Pearl J. (1988) Probabilistic Reasoning in Intelligent Systems, Morgan Kaufmann, ch. 2; numbers of Russell S.,
// Norvig P., Artificial Intelligence: A Modern Approach, which prints P(B | j, m) = 0.284. Tables and two of the values seen in a stored
// public copy. Checks B3 and the likelihood half of B11. Tolerance 1e-9 (the digits quoted).
const alarm = yesNoNetwork([
  ['burglary', [], [0.001]],
  ['earthquake', [], [0.002]],
  ['alarm', ['burglary', 'earthquake'], [0.95, 0.94, 0.29, 0.001]],
  ['john', ['alarm'], [0.9, 0.05]],
  ['mary', ['alarm'], [0.7, 0.01]],
]);

describe('burglar alarm (B3)', () => {
  test.each([
    ['burglary', { john: 'yes', mary: 'yes' }, 0.284171835],
    ['alarm', { john: 'yes', mary: 'yes' }, 0.760692039],
    ['earthquake', { john: 'yes', mary: 'yes' }, 0.176066838],
    ['burglary', { alarm: 'yes' }, 0.373551228],
    ['burglary', { john: 'yes' }, 0.0162837299],
    ['john', { burglary: 'yes' }, 0.849017],
    ['mary', { burglary: 'yes' }, 0.6586138],
  ])('P(%s | %j) is %d', (variable, evidence, p) => {
    expect(chanceOf(alarm, variable, evidence)).toBeCloseTo(p, 9);
  });

  test('both neighbours call with probability 0.00208', () => {
    expect(chanceOfEvidence(alarm, { john: 'yes', mary: 'yes' })).toBeCloseTo(0.00208410024, 11);
  });

  test('a known earthquake explains the alarm away: 0.374 falls to 0.00327', () => {
    expect(chanceOf(alarm, 'burglary', { alarm: 'yes', earthquake: 'yes' })).toBeCloseTo(0.00326842359, 11);
  });
});

// Noisy-OR as a table: inhibitions 0.6, 0.2, 0.1 of the fever example (inputs from memory; rule: Pearl 1988, section 4.3; Henrion 1989).
// Check B6. Tolerance 1e-12.
describe('fever by noisy-OR (B6)', () => {
  const inhibition = { cold: 0.6, flu: 0.2, malaria: 0.1 };
  const rows = [0, 1, 2, 3, 4, 5, 6, 7].map((absent) => {
    const present = Object.values(inhibition).filter((_, at) => ((absent >> (2 - at)) & 1) === 0);
    return 1 - present.reduce((product, q) => product * q, 1);
  });
  const fever = yesNoNetwork([
    ['cold', [], [0.1]],
    ['flu', [], [0.1]],
    ['malaria', [], [0.1]],
    ['fever', ['cold', 'flu', 'malaria'], rows],
  ]);
  test.each([
    ['no', 'no', 'no', 0],
    ['no', 'no', 'yes', 0.9],
    ['no', 'yes', 'no', 0.8],
    ['no', 'yes', 'yes', 0.98],
    ['yes', 'no', 'no', 0.4],
    ['yes', 'no', 'yes', 0.94],
    ['yes', 'yes', 'no', 0.88],
    ['yes', 'yes', 'yes', 0.988],
  ])('cold %s, flu %s, malaria %s: %d', (cold, flu, malaria, p) => {
    expect(chanceOf(fever, 'fever', { cold, flu, malaria })).toBeCloseTo(p, 12);
  });
});
