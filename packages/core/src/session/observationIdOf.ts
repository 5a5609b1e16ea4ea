import type { CaseEvent } from './caseEvent.ts';

/** The id of the result or tried repair an event records; nothing for events of another kind. */
export function observationIdOf(event: CaseEvent): string | undefined {
  return event.kind === 'result-recorded' || event.kind === 'repair-tried' ? event.id : undefined;
}
