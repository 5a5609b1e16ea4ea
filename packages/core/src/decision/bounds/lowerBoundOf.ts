import { pairBound } from './pairBound.ts';
import type { DecisionProblem, DecisionState } from '../problem/decisionProblem.ts';

/** A cost below which no policy can fall from a place on. */
export type LowerBound = (state: DecisionState) => number;

/** The strongest lower bound known for a problem. */
export function lowerBoundOf(problem: DecisionProblem): LowerBound {
  return pairBound(problem);
}
