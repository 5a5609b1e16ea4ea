import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { CaseEvent } from './caseEvent.ts';
import type { Session } from './session.ts';
import { stepOver } from './stepOver.ts';

/** A session with one more, already checked, event. What could be redone is forgotten. */
export function appendEvent(compiled: CompiledModel, session: Session, event: CaseEvent): Session {
  const { content, past } = session;
  const { state, step } = stepOver(compiled, session.start, content, event);
  return {
    ...session,
    content: { ...content, events: [...content.events, event], state },
    past: [...past, step],
    future: [],
  };
}
