import type { Configurations, DecisionProblem } from '../problem/decisionProblem.ts';

/** Whether results can bring a group of causes to a probability. */
export interface ThresholdQuestion {
  readonly problem: DecisionProblem;
  /** cause -> 1 where it belongs to the group. */
  readonly group: Uint8Array;
  readonly threshold: number;
  /** Ways in which the causes show, those of the group among them; for a quick look at every sequence. */
  readonly configurations: Configurations;
}
