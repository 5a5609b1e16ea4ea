import type { DecisionProblem } from '../problem/decisionProblem.ts';
import { oneStep } from '../solvers/oneStep.ts';
import type { Policy } from '../solvers/solver.ts';

// A search that is shown as it runs is written out again and again: what was looked at stays known.
const looks = new WeakMap<DecisionProblem, Policy>();

/** What one look at a state of this problem says: the test that saves most if only repairs came after it, or the repairs. Each state is
 * looked at once. */
export function lookOnce(problem: DecisionProblem): Policy {
  const known = looks.get(problem);
  if (known !== undefined) return known;
  const { policy } = oneStep.solve(problem);
  looks.set(problem, policy);
  return policy;
}
