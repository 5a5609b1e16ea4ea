import { compileModel, beliefOf } from '@faultodds/core';
import { expect, test } from 'vitest';
import { results } from '../fixtures/results.ts';
import { smallModel } from '../fixtures/smallModel.ts';

// Bayes's theorem over 180 conditionally independent observations (identity; constructed, computed with 30 digits). Check A8.
// Tolerance 1e-10 relative.
const rows = [
  [0.9, 0.5, 0.2],
  [0.3, 0.3, 0.8],
  [0.05, 0.6, 0.6],
];
const compiled = compileModel(
  smallModel({
    causes: { a: 0.6, b: 0.3, c: 0.1 },
    tests: Object.fromEntries(
      rows.map((row, at) => {
        const [a, b, c] = row.map((seen) => ({ seen, absent: 1 - seen }));
        return [`sign-${at + 1}`, { p: { a: a!, b: b!, else: c! } }];
      }),
    ),
  }),
);
const once = (['sign-1', 'sign-2', 'sign-3'] as const).map((sign) => [sign, 'seen'] as const);
const relative = (value: number | undefined, expected: number) => Math.abs(value! / expected - 1);

test('three observations (A8)', () => {
  const belief = beliefOf(compiled, { context: {}, observations: results(...once) });
  expect(relative(belief.posterior['a'], 0.18120805369127518)).toBeLessThan(1e-10);
  expect(relative(belief.posterior['b'], 0.6040268456375838)).toBeLessThan(1e-10);
  expect(relative(belief.posterior['c'], 0.214765100671141)).toBeLessThan(1e-10);
  expect(relative(belief.logProbabilityOfEvidence, -3.107781777362614)).toBeLessThan(1e-10);
});

test('180 observations do not underflow, in whatever order (A8)', () => {
  const interleaved = Array.from({ length: 60 }, () => once).flat();
  const sorted = interleaved.toSorted(([a], [b]) => (a < b ? -1 : 1));
  for (const named of [interleaved, sorted, sorted.toReversed()]) {
    const belief = beliefOf(compiled, { context: {}, observations: results(...named) });
    expect(relative(belief.logProbabilityOfEvidence, -142.84645099718009)).toBeLessThan(1e-10);
    expect(relative(belief.posterior['a'], 4.321184281164609e-51)).toBeLessThan(1e-10);
    expect(relative(belief.posterior['b'], 0.05876209197657679)).toBeLessThan(1e-10);
    expect(relative(belief.posterior['c'], 0.9412379080234232)).toBeLessThan(1e-10);
  }
});
