import type { DecisionProblem } from '../problem/decisionProblem.ts';
import type { LowerBound } from './lowerBound.ts';
import { pairBound } from './pairBound.ts';

/** The strongest lower bound known for a problem. */
export function lowerBoundOf(problem: DecisionProblem): LowerBound {
  return pairBound(problem);
}
