import { compileModel, beliefOf } from '@faultodds/core';
import { expect, test } from 'vitest';
import { results } from '../fixtures/results.ts';
import { smallModel } from '../fixtures/smallModel.ts';

// Eddy D.M. (1982) Probabilistic reasoning in clinical medicine, in Kahneman, Slovic, Tversky (eds) Judgment under Uncertainty,
// Cambridge University Press, 249-267. Inputs (79.2 %, 90.4 %) from memory, answer recomputed. Check A3. Tolerance 1e-10.
test('the figures of 1982 give 7.7 %, not the 7.8 % of the later retelling (A3)', () => {
  const compiled = compileModel(
    smallModel({
      causes: { ill: 0.01, well: 0.99 },
      tests: {
        mammogram: { p: { ill: { positive: 0.792, negative: 0.208 }, else: { positive: 0.096, negative: 0.904 } } },
      },
    }),
  );
  const { posterior } = beliefOf(compiled, { context: {}, observations: results(['mammogram', 'positive']) });
  expect(posterior['ill']).toBeCloseTo(1 / 13, 12);
  expect(posterior['ill']!.toFixed(3)).toBe('0.077'); // as printed
});
