import { makeFeasiblePlan, firstOf } from '../bounds/makeFeasiblePlan.ts';
import { solutionOfPolicy } from './solutionOfPolicy.ts';
import { makeSolver, type Policy, type Solver } from './solver.ts';

/** No tests: repairs by probability of cure over cost, each checked, then the referral. `upperBound` is the exact cost of that sequence.
 * Source: Kadane & Simon 1977, Annals of Statistics 5(2):237-255; Heckerman, Breese & Rommelse 1995, CACM 38(3):49-57. */
export const repairOrder: Solver = makeSolver('repair-order', function* (problem) {
  yield;
  const plan = makeFeasiblePlan(problem);
  const policy: Policy = (state) => firstOf(plan(state));
  return solutionOfPolicy(problem, 'repair-order', policy, plan(problem.start).expectedCost);
});
