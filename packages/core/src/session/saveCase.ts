import type { CaseDocument } from './caseDocument.ts';
import type { Session } from './session.ts';

/** The case as versioned plain data, ready for JSON. Undone steps are not saved; retracted observations are, with their retraction. */
export function saveCase(session: Session): CaseDocument {
  const { start, demo, content } = session;
  return {
    format: 'faultodds-case',
    version: 2,
    id: start.id,
    title: start.title,
    ...(demo === undefined ? {} : { demo }),
    events: content.events,
  };
}
