import { makeFeasiblePlan, firstOf } from '../bounds/makeFeasiblePlan.ts';
import { costOfKnowing, makePerfectInformation } from '../bounds/makePerfectInformation.ts';
import { certifiedGap, makeSolver, type Policy, type Solver } from './solver.ts';

/** No tests: repairs by probability of cure over cost, each checked, then the referral. `upperBound` is the exact cost of that sequence.
 * Source: Kadane & Simon 1977, Annals of Statistics 5(2):237-255; Heckerman, Breese & Rommelse 1995, CACM 38(3):49-57. */
export const repairOrder: Solver = makeSolver('repair-order', function* (problem) {
  yield;
  const { start } = problem;
  const plan = makeFeasiblePlan(problem);
  const policy: Policy = (state) => firstOf(plan(state));
  const upperBound = plan(start).expectedCost;
  const lowerBound = costOfKnowing(makePerfectInformation(problem)(start.open, start.tried), start);
  return {
    solver: 'repair-order',
    policy,
    progress: {
      best: policy(start),
      lowerBound,
      upperBound,
      certifiedGap: certifiedGap(lowerBound, upperBound),
      steps: 1,
    },
  };
});
