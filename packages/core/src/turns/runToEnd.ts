import type { Turns } from './turns.ts';

/** The answer of a computation, without a pause. @throws what it throws
 * @example runToEnd(boundedSearch.inTurns(problem)).progress.upperBound // 108 */
export function runToEnd<Answer>(turns: Turns<Answer, unknown>): Answer {
  for (;;) {
    const turn = turns.next();
    if (turn.done === true) return turn.value;
  }
}
