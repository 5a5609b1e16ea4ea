import { compileModel, beliefOf } from '@faultodds/core';
import { expect, test } from 'vitest';
import { results } from '../fixtures/results.ts';
import { smallModel } from '../fixtures/smallModel.ts';

// The total-probability problem of three suppliers, as in Montgomery D.C., Runger G.C., Applied Statistics and Probability for
// Engineers (problem from memory, answer recomputed: 15/37, 12/37, 10/37). Check A7. Tolerance 1e-12.
test('a defective part came from the three suppliers as 15 to 12 to 10 (A7)', () => {
  const row = (defective: number) => ({ defective, sound: 1 - defective });
  const compiled = compileModel(
    smallModel({
      causes: { first: 0.5, second: 0.3, third: 0.2 },
      tests: { part: { p: { first: row(0.03), second: row(0.04), else: row(0.05) } } },
    }),
  );
  const belief = beliefOf(compiled, { context: {}, observations: results(['part', 'defective']) });
  expect(Math.exp(belief.logProbabilityOfEvidence)).toBeCloseTo(0.037, 12);
  expect(belief.posterior['first']).toBeCloseTo(15 / 37, 12);
  expect(belief.posterior['second']).toBeCloseTo(12 / 37, 12);
  expect(belief.posterior['third']).toBeCloseTo(10 / 37, 12);
});
