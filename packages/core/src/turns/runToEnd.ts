import type { Turns } from './turns.ts';

/** The answer of a computation, without a pause. @throws what it throws */
export function runToEnd<Answer>(turns: Turns<Answer, unknown>): Answer {
  for (;;) {
    const turn = turns.next();
    if (turn.done === true) return turn.value;
  }
}
