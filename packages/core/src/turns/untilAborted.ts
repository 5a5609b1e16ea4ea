import type { Cancel } from './cancel.ts';
import type { Turns } from './turns.ts';

/** The turns of another computation as a part of one's own, which shows nothing meanwhile; `undefined` when the signal ends it first. */
export function* untilAborted<Answer>(
  turns: Turns<Answer, unknown>,
  signal: Cancel | undefined,
): Turns<Answer | undefined> {
  while (signal?.aborted !== true) {
    const turn = turns.next();
    if (turn.done === true) return turn.value;
    yield;
  }
  return undefined;
}
