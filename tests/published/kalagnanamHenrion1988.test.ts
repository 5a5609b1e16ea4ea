import { compileModel, advise, beliefOf } from '@faultodds/core';
import { expect, test } from 'vitest';
import { smallModel } from '../fixtures/smallModel.ts';

// Kalagnanam J., Henrion M. (1988) A comparison of decision analysis and expert rules for sequential diagnosis, UAI 4:271-281; Kadane
// J.B., Simon H.A. (1977) Optimal strategies for a class of constrained sequential problems, Annals of Statistics 5(2):237-255: try in
// order of probability over cost. Theorem seen cited in stored abstracts; instance constructed, all 120 orders enumerated: best 8.2,
// most-likely-first 10.3, cheapest-first 9.4, worst 13.65. Check C2. Tolerance 1e-9.
test('the plan tries 4, 2, 1, 3, 5 and costs 8.2 (C2)', () => {
  const compiled = compileModel(
    smallModel({
      causes: { f1: 0.3, f2: 0.25, f3: 0.2, f4: 0.15, f5: 0.1 },
      repairs: {
        a1: { cures: { f1: 1 }, parts: 6 },
        a2: { cures: { f2: 1 }, parts: 2 },
        a3: { cures: { f3: 1 }, parts: 5 },
        a4: { cures: { f4: 1 }, parts: 1 },
        a5: { cures: { f5: 1 }, parts: 4 },
      },
      referralFee: 1e6,
    }),
  );
  const { best, repairNow } = advise(compiled, beliefOf(compiled, { context: {}, observations: [] }));
  expect(repairNow.steps.map((step) => step.repair)).toEqual(['a4', 'a2', 'a1', 'a3', 'a5']);
  expect(repairNow.expectedCost.amount).toBeCloseTo(8.2, 9);
  expect(repairNow.steps.map((step) => step.reached)).toEqual(
    [1, 0.85, 0.6, 0.3, 0.1].map((p) => expect.closeTo(p, 12)),
  );
  expect(best).toMatchObject({ kind: 'repair', repair: 'a4' });
});
