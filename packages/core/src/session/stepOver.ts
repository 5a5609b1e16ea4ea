import type { CompiledModel } from '../compiled/compiledModel.ts';
import { applyEvent } from './applyEvent.ts';
import type { CaseEvent } from './caseEvent.ts';
import type { CaseState } from './caseState.ts';
import { foldEvents } from './foldEvents.ts';
import type { Session, SessionContent, SessionStep } from './session.ts';

/** What one more, already checked, event does to a case: the state after it, and the step that undo takes back.
 * Written down rather than found out by comparing: its size does not grow with the number of events before it. */
export function stepOver(
  compiled: CompiledModel,
  start: Session['start'],
  { events, state }: SessionContent,
  event: CaseEvent,
): { readonly state: CaseState; readonly step: SessionStep } {
  const next =
    event.kind === 'observation-retracted'
      ? foldEvents(compiled, start, [...events, event])
      : applyEvent(compiled, state, event);
  const step: SessionStep = {
    forward: [
      { op: 'add', path: ['events', events.length], value: event },
      { op: 'replace', path: ['state'], value: next },
    ],
    backward: [
      { op: 'replace', path: ['events', 'length'], value: events.length },
      { op: 'replace', path: ['state'], value: state },
    ],
  };
  return { state: next, step };
}
