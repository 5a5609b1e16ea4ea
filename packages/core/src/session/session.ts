import type { Patch } from 'immer';
import type { CaseEvent } from './caseEvent.ts';
import type { DemoFacts } from './caseDocument.ts';
import type { CaseNotice } from './caseNotice.ts';
import type { CaseState } from './caseState.ts';
import type { UnplacedEvent } from './unplacedEvent.ts';

/** A case being worked on: its events, the state they fold to, and what undo and redo need. An immutable value. */
export interface Session {
  /** How the case began: before any event. */
  readonly start: CaseState;
  /** Present when this is an invented teaching case. */
  readonly demo?: DemoFacts;
  /** What `loadCase` had to say when the case was opened. */
  readonly notices: readonly CaseNotice[];
  readonly content: SessionContent;
  /** Steps that undo takes back, latest last. */
  readonly past: readonly SessionStep[];
  /** Steps that redo brings back, next one last. Empty after anything new is recorded. */
  readonly future: readonly SessionStep[];
}

/** The part of a session that undo and redo move through. */
export interface SessionContent {
  readonly events: readonly CaseEvent[];
  /** Kept, but without effect: the model does not know them. Undo leaves them alone. */
  readonly unplaced: readonly UnplacedEvent[];
  readonly state: CaseState;
}

/** One step, as patches in both directions. */
export interface SessionStep {
  readonly forward: readonly Patch[];
  readonly backward: readonly Patch[];
}

/** The state of the case now.
 * @example caseState(session).observations.map(({ id }) => id) // ['one', 'two'] */
export function caseState(session: Session): CaseState {
  return session.content.state;
}
