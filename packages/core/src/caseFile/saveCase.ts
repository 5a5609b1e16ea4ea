import type { CompiledModel } from '../compiled/compiledModel.ts';
import { modelIdentity } from '../model/modelIdentity.ts';
import type { CaseDocument } from '../session/caseDocument.ts';
import type { CaseEvent } from '../session/caseEvent.ts';
import { observationIdOf } from '../session/observationIdOf.ts';
import type { Session } from '../session/session.ts';
import type { UnplacedEvent } from '../session/unplacedEvent.ts';

/** The case as versioned plain data, ready for JSON. Undone steps are not saved; retracted observations are, with their retraction, and so
 * is what the model does not know. @param compiled the model the case was recorded with; its identity is written into the case.
 * @example
 * ```ts
 * const noted = recordEvent(pump, startCase({ id: 'case-1', title: 'No water' }), { kind: 'note-added', text: 'It hums.' });
 * const { format, version, events } = saveCase(pump, noted);
 * [format, version]; // ['faultodds-case', 3]
 * events; // [{ kind: 'note-added', text: 'It hums.' }]
 * ``` */
export function saveCase({ model }: CompiledModel, session: Session): CaseDocument {
  const { start, demo, content } = session;
  const { events, unplaced } = content;
  return {
    format: 'faultodds-case',
    version: 3,
    id: start.id,
    title: start.title,
    model: modelIdentity(model),
    ...(demo === undefined ? {} : { demo }),
    events,
    ...(unplaced.length === 0
      ? {}
      : { unplaced: unplaced.map((one) => ({ ...one, before: positionOf(one, events) })) }),
  };
}

/** Undo may have taken away what stood before it; it never comes after its own retraction. */
function positionOf({ before, event }: UnplacedEvent, events: readonly CaseEvent[]): number {
  const id = observationIdOf(event);
  const retracted = events.findIndex((one) => one.kind === 'observation-retracted' && one.id === id);
  return Math.min(before, retracted < 0 ? events.length : retracted);
}
