import type { CaseState } from './caseState.ts';
import type { DemoFacts } from './caseDocument.ts';
import type { Session } from './session.ts';

/** A new, empty case. Intake answers and everything else come as events.
 * @param about.id letters, digits, - and _. @param about.demo only for invented teaching cases.
 * @example
 * ```ts
 * const started = startCase({ id: 'case-7', title: 'Rough when cold' });
 * caseState(started) // { id: 'case-7', title: 'Rough when cold', context: {}, observations: [], openAccess: [], notes: [] }
 * ``` */
export function startCase(about: { readonly id: string; readonly title: string; readonly demo?: DemoFacts }): Session {
  const { id, title, demo } = about;
  const start: CaseState = { id, title, context: {}, observations: [], openAccess: [], notes: [] };
  const session = { start, notices: [], content: { events: [], unplaced: [], state: start }, past: [], future: [] };
  return demo === undefined ? session : { ...session, demo };
}
