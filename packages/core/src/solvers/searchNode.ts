import type { Action } from '../problem/action.ts';
import type { DecisionState } from '../problem/decisionProblem.ts';
import type { RepairSequence } from '../repairs/planRepairs.ts';

/** A state in the search: what its optimum lies between. Mutable, private to one search. */
export interface SearchNode {
  readonly state: DecisionState;
  lower: number;
  upper: number;
  /** What reaches `upper`: the sequence of repairs from here, or an option. */
  plan: RepairSequence | SearchOption;
  /** What can be done, unless it cannot be best any more; `undefined` before the state was examined. */
  options: SearchOption[] | undefined;
  /** Whether the stronger bound was asked here. */
  isStrong: boolean;
}

/** Something that can be done at a node. */
export interface SearchOption {
  readonly action: Action;
  /** What it costs, with what its openings count for beyond their price if they prove needless. */
  readonly money: number;
  readonly branches: readonly { readonly probability: number; readonly node: SearchNode }[];
  lower: number;
  upper: number;
  /** Times a way led through it. */
  visits: number;
}

/** Whether a node's plan is an option (then its branches say how it goes on). */
export function isOption(plan: SearchNode['plan']): plan is SearchOption {
  return 'branches' in plan;
}
