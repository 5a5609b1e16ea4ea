import * as z from 'zod/mini';
import { checkOptions } from '../validation/checkOptions.ts';
import { optionSchemas } from '../validation/optionSchemas.ts';
import type { Cancel } from '../turns/cancel.ts';
import { runToEnd } from '../turns/runToEnd.ts';
import type { Turns } from '../turns/turns.ts';
import type { Action } from '../problem/action.ts';
import type { DecisionProblem, DecisionState } from '../problem/decisionProblem.ts';

/** What to do at any state a plan can reach. */
export type Policy = (state: DecisionState) => Action;

/** How long a solver may work, and what it calls with every better answer. */
export interface SolverOptions {
  /** States examined at most. Each solver states its default. */
  readonly steps?: number;
  /** Looked at after every step; ends with the best answer so far. */
  readonly signal?: Cancel;
  /** Called with every better answer. */
  readonly onImprove?: (progress: SolverProgress) => void;
}

/** Shape of `SolverOptions`. */
const solverOptionsSchema: z.ZodMiniType = z.strictObject({
  steps: z.optional(optionSchemas.budget(0)),
  signal: z.optional(optionSchemas.signal),
  onImprove: z.optional(optionSchemas.callback),
});

/** How far a solver has come. */
export interface SolverProgress {
  readonly best: Action;
  /** No policy is cheaper than this. */
  readonly lowerBound: number;
  /** Expected cost of the plan found so far. */
  readonly upperBound: number;
  /** (upper - lower) / upper: the plan is at most this share of its cost dearer than the best possible one. */
  readonly certifiedGap: number;
  readonly steps: number;
}

/** What an action rests on: a `search` of what comes after it; one `look` at the state, in which the repairs without a test came out best;
 * `none` yet: it is the first of those repairs. */
export type Grounds = 'search' | 'look' | 'none';

/** What a solver found. `progress.upperBound` is the exact expected cost of `policy` where the solver says so, else that of a policy that
 * never costs more. */
export interface Solution {
  readonly solver: string;
  readonly policy: Policy;
  readonly progress: SolverProgress;
  /** What the policy rests on at a state. Absent: on a search everywhere. */
  readonly groundsAt?: (state: DecisionState) => Grounds;
}

/** One way to decide. */
export interface Solver {
  readonly id: string;
  readonly solve: (problem: DecisionProblem, options?: SolverOptions) => Solution;
  /** The same, giving way after every step; now and then with the solution so far. */
  readonly inTurns: (problem: DecisionProblem, options?: SolverOptions) => Turns<Solution, Solution>;
}

/** A solver of its turns; both ways of asking it look at the options at once. */
export function makeSolver(
  id: string,
  turnsOf: (problem: DecisionProblem, options: SolverOptions) => Turns<Solution, Solution>,
): Solver {
  const inTurns = (problem: DecisionProblem, options: SolverOptions = {}): Turns<Solution, Solution> => {
    checkOptions(solverOptionsSchema, options);
    return turnsOf(problem, options);
  };
  return { id, inTurns, solve: (problem, options) => runToEnd(inTurns(problem, options)) };
}

/** Share of `upper` by which it may exceed the optimum. */
export function certifiedGap(lower: number, upper: number): number {
  return upper > 0 ? Math.max(0, upper - lower) / upper : 0;
}
