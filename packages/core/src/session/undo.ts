import { applyPatches, enablePatches, type Patch } from 'immer';
import type { Session, SessionContent } from './session.ts';

/** Whether there is a step to take back.
 * @example canUndo(startCase({ id: 'case-7', title: 'Rough when cold' })) // false */
export function canUndo(session: Session): boolean {
  return session.past.length > 0;
}

/** The session before its last step; itself when there is none.
 * @example caseState(undo(session)).observations.map(({ id }) => id) // ['one'] */
export function undo(session: Session): Session {
  const step = session.past.at(-1);
  if (step === undefined) return session;
  return {
    ...session,
    content: patched(session.content, step.backward),
    past: session.past.slice(0, -1),
    future: [...session.future, step],
  };
}

/** Whether a step that was taken back can be brought back.
 * @example canRedo(undo(session)) // true */
export function canRedo(session: Session): boolean {
  return session.future.length > 0;
}

/** The session with the last undone step brought back; itself when there is none.
 * @example caseState(redo(undo(session))).observations.map(({ id }) => id) // ['one', 'two'] */
export function redo(session: Session): Session {
  const step = session.future.at(-1);
  if (step === undefined) return session;
  return {
    ...session,
    content: patched(session.content, step.forward),
    past: [...session.past, step],
    future: session.future.slice(0, -1),
  };
}

function patched(content: SessionContent, patches: readonly Patch[]): SessionContent {
  enablePatches(); // here, not at module load: an app that never undoes pays nothing
  return applyPatches(content, patches);
}
