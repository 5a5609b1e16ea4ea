import { compileModel, beliefOf } from '@faultodds/core';
import { expect, test } from 'vitest';
import { results } from '../fixtures/results.ts';
import { smallModel } from '../fixtures/smallModel.ts';

// Gigerenzer G., Hoffrage U. (1995) How to improve Bayesian reasoning without instruction: frequency formats.
// Psychological Review 102(4):684-704. Figures seen in a stored public copy. Checks A1 and A2. Tolerance 1e-12, printed digits where rounded.
const compiled = compileModel(
  smallModel({
    causes: { ill: 0.01, well: 0.99 },
    tests: { mammogram: { p: { ill: { positive: 0.8, negative: 0.2 }, else: { positive: 0.096, negative: 0.904 } } } },
  }),
);

test('1 % prior, 80 % sensitivity and 9.6 % false alarms make a positive mammogram worth 7.8 % (A1)', () => {
  const { posterior } = beliefOf(compiled, { context: {}, observations: results(['mammogram', 'positive']) });
  expect(posterior['ill']).toBeCloseTo(0.0776397516, 10);
  expect(posterior['ill']!.toFixed(3)).toBe('0.078'); // as printed
});

test('of 1000 women 103 are called back and 8 of them are ill (A2)', () => {
  const { prior, predictive } = beliefOf(compiled, { context: {}, observations: [] });
  const { posterior } = beliefOf(compiled, { context: {}, observations: results(['mammogram', 'positive']) });
  const calledBack = predictive['mammogram']!['positive']! * 1000;
  expect(Math.round(prior['ill']! * 1000)).toBe(10);
  expect(Math.round(calledBack)).toBe(103);
  expect(Math.round(posterior['ill']! * calledBack)).toBe(8);
  // whole people: 8 of 103 is 0.07767, the exact value 0.07764
  expect(Math.abs(posterior['ill']! - 8 / 103)).toBeLessThan(0.0005);
});
