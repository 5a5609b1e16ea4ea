import { runToEnd } from '../turns/runToEnd.ts';
import { untilAborted } from '../turns/untilAborted.ts';
import type { DecisionState } from '../problem/decisionProblem.ts';
import { searchInTurns } from './boundedSearch.ts';
import { makeSolver, type Solution, type Solver } from './solver.ts';
import type { Turns } from '../turns/turns.ts';

/** Bounded search anew at every state, a few steps each, with the bound of perfect information: what somebody does who asks again after
 * every result. `upperBound` is the cost of the first plan; `steps` is the budget at every state (default 12).
 * Source: see `boundedSearch`. */
export const replanning: Solver = makeSolver('replanning', function* (problem, { steps = 12, signal }) {
  const options = signal === undefined ? { steps } : { steps, signal };
  const at = (start: DecisionState): Turns<Solution, Solution> => searchInTurns({ ...problem, start }, options);
  // the search looks at the signal itself, and answers from what it has
  const first = (yield* untilAborted(at(problem.start), undefined))!;
  return { solver: 'replanning', policy: (state) => runToEnd(at(state)).progress.best, progress: first.progress };
});
