import { compileModel, beliefOf } from '@faultodds/core';
import { explainCase } from '@faultodds/core/explanation';
import { describe, expect, test } from 'vitest';
import { results } from '../fixtures/results.ts';
import { smallModel } from '../fixtures/smallModel.ts';

// Fagan T.J. (1975) Nomogram for Bayes's theorem. N Engl J Med 293:257: post-test odds = pre-test odds x likelihood ratio.
// Recomputed. Check A5. Tolerance 1e-9.
const cases = [
  { prior: 0.25, ratio: 10, posterior: 0.769230769 },
  { prior: 0.1, ratio: 5, posterior: 0.357142857 },
  { prior: 0.5, ratio: 0.1, posterior: 0.0909090909 },
  { prior: 0.02, ratio: 50, posterior: 0.505050505 },
];

describe.each(cases)('a likelihood ratio of $ratio on a prior of $prior', ({ prior, ratio, posterior }) => {
  const ill = ratio >= 1 ? 0.9 : 0.9 * ratio;
  const well = ratio >= 1 ? 0.9 / ratio : 0.9;
  const compiled = compileModel(
    smallModel({
      causes: { ill: prior, well: 1 - prior },
      tests: { sign: { p: { ill: { seen: ill, absent: 1 - ill }, else: { seen: well, absent: 1 - well } } } },
    }),
  );
  const facts = { context: {}, observations: results(['sign', 'seen']) };

  test(`gives ${posterior} (A5)`, () => {
    expect(beliefOf(compiled, facts).posterior['ill']).toBeCloseTo(posterior, 9);
  });

  test('weighs ten times its logarithm in decibans', () => {
    const weight = explainCase(compiled, facts).observations[0]!.weightDecibans;
    expect(weight['ill']).toBeCloseTo(10 * Math.log10(ratio), 9);
    expect(weight['well']).toBeCloseTo(-10 * Math.log10(ratio), 9);
  });
});
