import { compileModel } from '@faultodds/core';
import { explainCase } from '@faultodds/core/explanation';
import { expect, test } from 'vitest';
import { results } from '../fixtures/results.ts';
import { uncheckedModel } from '../fixtures/smallModel.ts';

// Good I.J., Michie D., Timms G. (1945) General Report on Tunny, section 21 (g): the double-headed penny. Seen in a stored public copy.
// Check A6. Tolerance 1e-8; the report rounds a head to 3 decibans, exact is 3.0103.
test('each head weighs 3 decibans for the double-headed penny, and twenty overturn 10 000 to 1 (A6)', () => {
  const compiled = compileModel(
    uncheckedModel({
      causes: { 'double-headed': 1, fair: 10_000 },
      tests: { toss: { p: { 'double-headed': { head: 1, tail: 0 }, else: { head: 0.5, tail: 0.5 } } } },
    }),
  );
  const heads = Array.from({ length: 20 }, () => ['toss', 'head'] as const);
  const { beliefs, observations } = explainCase(compiled, { context: {}, observations: results(...heads) });
  const weights = observations.map((one) => one.weightDecibans['double-headed']!);
  for (const weight of weights) {
    expect(weight).toBeCloseTo(3.01029996, 8);
    expect(Math.round(weight)).toBe(3); // as printed
  }
  expect(weights.reduce((a, b) => a + b, 0)).toBeCloseTo(60.2059991, 7);
  const after = beliefs.at(-1)!.posterior;
  expect(after['double-headed']! / after['fair']!).toBeCloseTo(104.8576, 8);
  expect(after['double-headed']).toBeCloseTo(0.990553347, 9);
});
