import type { Turns } from '../turns/turns.ts';
import type { DecisionState } from '../problem/decisionProblem.ts';
import { takeAction } from '../problem/takeAction.ts';
import type { ThresholdQuestion } from './thresholdQuestion.ts';

/** Exact chances that doing all tests of a sequence brings the group to the threshold, if the cause is in it and if it is not. Their
 * order does not matter; the one with the fewest outcomes goes first, which asks for the fewest tables. Gives way after every
 * test taken. */
export function* judgeSequence(
  { problem, group, threshold }: Omit<ThresholdQuestion, 'configurations'>,
  sequence: readonly number[],
): Turns<{ readonly reachedIfTrue: number; readonly reachedIfFalse: number }> {
  const inGroup = (posterior: Float64Array): number => posterior.reduce((sum, p, c) => sum + p * group[c]!, 0);
  const order = [...sequence].sort((a, b) => problem.tests[a]!.outcomes.length - problem.tests[b]!.outcomes.length);
  let reachedTrue = 0;
  let reachedFalse = 0;
  const walk = function* (state: DecisionState, reached: number, at: number): Turns<void> {
    const test = order[at];
    if (test === undefined) {
      const p = inGroup(state.posterior);
      if (p < threshold) return;
      reachedTrue += reached * p;
      reachedFalse += reached * (1 - p);
      return;
    }
    const { branches } = takeAction(problem, state, { kind: 'test', test });
    yield;
    for (const { probability, state: then } of branches) {
      if (then !== undefined) yield* walk(then, reached * probability, at + 1);
    }
  };
  yield* walk(problem.start, 1, 0);
  const now = inGroup(problem.start.posterior);
  return {
    reachedIfTrue: Math.min(1, reachedTrue / now),
    reachedIfFalse: now < 1 ? Math.min(1, reachedFalse / (1 - now)) : 0,
  };
}
