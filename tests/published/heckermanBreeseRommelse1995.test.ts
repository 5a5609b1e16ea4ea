import { compileModel, advise, beliefOf } from '@faultodds/core';
import { describe, expect, test } from 'vitest';
import { smallModel, type SmallRepair } from '../fixtures/smallModel.ts';

// Heckerman D., Breese J.S., Rommelse K. (1995) Decision-theoretic troubleshooting, Communications of the ACM 38(3):49-57; Breese &
// Heckerman (1996) UAI 12:124-132. Formula from memory, instances constructed and enumerated; their worked figures were not found.
const causes = { f1: 0.3, f2: 0.25, f3: 0.2, f4: 0.15, f5: 0.1 };
const observeCost = [6, 2, 5, 1, 4];
const tries = Object.fromEntries(
  observeCost.map((parts, at): [string, SmallRepair] => [`a${at + 1}`, { cures: { [`f${at + 1}`]: 1 }, parts }]),
);

// ECR = sum over steps of P(reached) x cost of looking + P(cause) x cost of its repair. Check C3. Tolerance 1e-9.
test('looking and repairing costs 43.45, of which 8.2 depends on the order 4, 2, 1, 3, 5 (C3)', () => {
  const compiled = compileModel(smallModel({ causes, repairs: tries, referralFee: 1e6 }));
  const { repairNow } = advise(compiled, beliefOf(compiled, { context: {}, observations: [] }));
  expect(repairNow.steps.map((step) => step.repair)).toEqual(['a4', 'a2', 'a1', 'a3', 'a5']);
  // our steps cost the same whether they cure or not; the repair proper, paid only for the cause that is there, is added here
  const repairCost: Readonly<Record<string, number>> = { a1: 40, a2: 10, a3: 90, a4: 5, a5: 20 };
  const repairing = repairNow.steps.reduce((sum, step) => sum + step.cures * repairCost[step.repair]!, 0);
  expect(repairing).toBeCloseTo(35.25, 9);
  expect(repairNow.expectedCost.amount + repairing).toBeCloseTo(43.45, 9);
});

// Stopping: hand over for a fixed price S. Check C4. Tolerance 1e-9.
describe('hand over for a fixed price (C4)', () => {
  // our referral costs its fee and then the right repair; the published price covers all, so the job done there is as good as free,
  // and as good as useless here
  const never = 1e-15;
  const there: SmallRepair = { cures: { f1: never, f2: never, f3: never, f4: never, f5: never }, parts: 1e-12 };
  test.each([
    [5, [], 5],
    [7, ['a4', 'a2'], 6.9],
    [8, ['a4', 'a2'], 7.5],
    [10, ['a4', 'a2', 'a1', 'a3', 'a5'], 8.2],
    [15, ['a4', 'a2', 'a1', 'a3', 'a5'], 8.2],
  ] as const)('S = %d: try %j, expected cost %d', (referralFee, order, cost) => {
    const compiled = compileModel(smallModel({ causes, repairs: { ...tries, there }, referralFee }));
    const advice = advise(compiled, beliefOf(compiled, { context: {}, observations: [] }));
    expect(advice.repairNow.steps.map((step) => step.repair)).toEqual(order);
    expect(advice.repairNow.expectedCost.amount).toBeCloseTo(cost, 9);
    expect(advice.best).toMatchObject(order.length === 0 ? { kind: 'refer' } : { kind: 'repair', repair: 'a4' });
  });
});
