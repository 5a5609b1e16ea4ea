import { costOfKnowing, makePerfectInformation } from '../bounds/makePerfectInformation.ts';
import type { DecisionProblem } from '../problem/decisionProblem.ts';
import { certifiedGap, type Policy, type Solution } from './solver.ts';

/** The solution of a solver that searches nothing: a policy at once, held against perfect information. */
export function solutionOfPolicy(
  problem: DecisionProblem,
  solver: string,
  policy: Policy,
  upperBound: number,
): Solution {
  const { start } = problem;
  const lowerBound = costOfKnowing(makePerfectInformation(problem)(start.open, start.tried), start);
  return {
    solver,
    policy,
    progress: {
      best: policy(start),
      lowerBound,
      upperBound,
      certifiedGap: certifiedGap(lowerBound, upperBound),
      steps: 1,
    },
  };
}
