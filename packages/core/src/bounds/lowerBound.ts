import type { DecisionState } from '../problem/decisionProblem.ts';

/** A cost below which no policy can fall from a state on. */
export type LowerBound = (state: DecisionState) => number;
