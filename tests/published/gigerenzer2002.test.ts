import { compileModel, beliefOf } from '@faultodds/core';
import { expect, test } from 'vitest';
import { results } from '../fixtures/results.ts';
import { smallModel } from '../fixtures/smallModel.ts';

// Gigerenzer G. (2002) Calculated Risks, Simon & Schuster; retold by Strogatz S. (2010). Figures seen in a stored public copy.
// Check A4. Tolerance 1e-9 exact, half a per cent for the whole-people sentence "1 in 11".
test('a positive result in low-risk screening means 9.4 %, about 1 in 11 (A4)', () => {
  const compiled = compileModel(
    smallModel({
      causes: { ill: 0.008, well: 0.992 },
      tests: { screening: { p: { ill: { positive: 0.9, negative: 0.1 }, else: { positive: 0.07, negative: 0.93 } } } },
    }),
  );
  const { posterior } = beliefOf(compiled, { context: {}, observations: results(['screening', 'positive']) });
  expect(posterior['ill']).toBeCloseTo(0.0939457203, 9);
  expect(Math.abs(posterior['ill']! - 1 / 11)).toBeLessThan(0.005);
});
