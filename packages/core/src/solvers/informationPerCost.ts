import { allowedActions, chanceOfCure } from '../problem/allowedActions.ts';
import type { DecisionProblem, DecisionState } from '../problem/decisionProblem.ts';
import { makeFeasiblePlan, firstOf } from '../bounds/makeFeasiblePlan.ts';
import { informationGain } from '../belief/informationGain.ts';
import { solutionOfPolicy } from './solutionOfPolicy.ts';
import { makeSolver, type Policy, type Solver } from './solver.ts';

// When a repair is this likely to cure, asking on is a habit, not a decision. Judgement, 0.7-0.9.
const SURE_ENOUGH = 0.8;
// Less than this tells nothing worth a walk to the car.
const LEAST_BITS = 0.01;

/** The test with most bits per money, until one repair is likely enough to cure (0.8) or no test brings a hundredth of a bit; then repairs
 * by probability over cost. `upperBound` is the cost of repairing without a test; the policy may cost more or less than that.
 * Source: entropy as a measure of tests, de Kleer & Williams 1987, Artificial Intelligence 32:97-130; where to stop is ours. */
export const informationPerCost: Solver = makeSolver('information-per-cost', function* (problem) {
  yield;
  const plan = makeFeasiblePlan(problem);
  const policy: Policy = (state) => mostTelling(problem, state) ?? firstOf(plan(state));
  return solutionOfPolicy(problem, 'information-per-cost', policy, plan(problem.start).expectedCost);
});

function mostTelling(problem: DecisionProblem, state: DecisionState): { kind: 'test'; test: number } | undefined {
  const actions = allowedActions(problem, state);
  const isSure = actions.some(
    (action) => action.kind === 'repair' && chanceOfCure(problem, state, action.repair) >= SURE_ENOUGH,
  );
  if (isSure) return undefined;
  let most = 0;
  let best: { kind: 'test'; test: number } | undefined;
  for (const action of actions) {
    if (action.kind !== 'test') continue;
    const bits = bitsOf(problem, state, action.test);
    const perMoney = bits / Math.max(problem.testCost(action.test, state.open).money, 1e-9);
    if (bits >= LEAST_BITS && perMoney > most) [most, best] = [perMoney, action];
  }
  return best;
}

function bitsOf(problem: DecisionProblem, { posterior, evidence }: DecisionState, test: number): number {
  const table = problem.outcomeTable(evidence, test);
  const count = problem.tests[test]!.outcomes.length;
  const predictive = new Float64Array(count);
  for (let c = 0; c < posterior.length; c += 1) {
    for (let o = 0; o < count; o += 1) predictive[o]! += posterior[c]! * table[c * count + o]!;
  }
  return informationGain(posterior, table, predictive);
}
