import type { DecisionProblem, DecisionState } from './decisionProblem.ts';
import { costOfKnowing, perfectInformation } from './perfectInformation.ts';

/** A cost below which no policy can fall from a place on. */
export type LowerBound = (state: DecisionState) => number;

/** The strongest lower bound known for a problem. */
export function lowerBoundOf(problem: DecisionProblem): LowerBound {
  const knowing = perfectInformation(problem);
  return (state) => costOfKnowing(knowing(state.open, state.tried), state);
}
