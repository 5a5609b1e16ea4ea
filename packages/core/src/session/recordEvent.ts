import { atLeastOne } from '../errors/atLeastOne.ts';
import { CaseError } from '../errors/caseError.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import { problemFor } from '../validation/problemFor.ts';
import { problemsOfSchema } from '../validation/problemsOfSchema.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { appendEvent } from './appendEvent.ts';
import type { CaseEvent } from './caseEvent.ts';
import { caseEventSchema } from './caseSchema.ts';
import { findEventProblems } from './findEventProblems.ts';
import { mostEvents } from './mostEvents.ts';
import type { Session } from './session.ts';

/** The session after one more event; the one given is left as it was. Paths in errors are relative to the event.
 * @throws EvidenceError an answer, result or repair names what the model does not know (`feature-unknown`,
 * `value-unknown`, `test-unknown`, `outcome-unknown`, `repair-unknown`), says nothing (`outcome-missing`, `likelihood-invalid`),
 * or a test would not apply to this car (`test-not-applicable`, `context-needed`)
 * @throws CaseError the event is malformed, or the case does not allow it (`case-full`, `id-taken`, `engine-differs`, `cylinder-unknown`,
 * `observation-unknown`, `access-unknown`, `equipment-unknown`)
 * @example
 * ```ts
 * const later = recordEvent(compiled, session, { kind: 'note-added', text: 'Worse when cold.' });
 * caseState(later).notes // ['Worse when cold.']
 * caseState(session).notes // []
 * ``` */
export function recordEvent(compiled: CompiledModel, session: Session, event: CaseEvent): Session {
  const checked = caseEventSchema.safeParse(event);
  if (!checked.success) {
    const problems = problemsOfSchema(checked.error, event);
    if (atLeastOne(problems)) throw new CaseError(problems);
  }
  const wellFormed = checked.data as CaseEvent;
  const { events, unplaced } = session.content;
  if (events.length + unplaced.length >= mostEvents)
    throw new CaseError([problemFor('case-full', '', { most: mostEvents })]);
  const problems = findEventProblems(compiled.model, session.content, wellFormed);
  if (atLeastOne(problems)) {
    throw aboutEvidence(wellFormed) && problems[0].code !== 'id-taken'
      ? new EvidenceError(problems)
      : new CaseError(problems);
  }
  return appendEvent(compiled, session, wellFormed);
}

function aboutEvidence({ kind }: CaseEvent): boolean {
  return kind === 'context-set' || kind === 'context-cleared' || kind === 'result-recorded' || kind === 'repair-tried';
}
