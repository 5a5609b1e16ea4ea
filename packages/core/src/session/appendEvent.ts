import { enablePatches, produceWithPatches } from 'immer';
import type { CompiledModel } from '../model/compiledModel.ts';
import { applyEvent } from './applyEvent.ts';
import type { CaseEvent } from './caseEvent.ts';
import { foldEvents } from './foldEvents.ts';
import type { Session } from './session.ts';

/** A session with one more, already checked, event. What could be redone is forgotten. */
export function appendEvent(compiled: CompiledModel, session: Session, event: CaseEvent): Session {
  const { events, state } = session.content;
  const next =
    event.kind === 'observation-retracted'
      ? foldEvents(compiled, session.start, [...events, event])
      : applyEvent(compiled, state, event);
  enablePatches(); // here, not at module load: an app that never records pays nothing
  const [content, forward, backward] = produceWithPatches(session.content, (draft) => {
    draft.events.push(event as never);
    draft.state = next as never;
  });
  return { ...session, content, past: [...session.past, { forward, backward }], future: [] };
}
