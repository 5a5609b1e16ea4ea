import type { Problem } from '../errors/faultoddsError.ts';
import type { CompiledModel } from '../model/compiledModel.ts';
import { namesToday } from '../model/namesToday.ts';
import { appendEvent } from './appendEvent.ts';
import type { CaseDocument } from './caseDocument.ts';
import type { CaseEvent } from './caseEvent.ts';
import type { EventUnplaced } from './caseNotice.ts';
import { findEventProblems } from './findEventProblems.ts';
import { renameEvent } from './renameEvent.ts';
import type { Session } from './session.ts';

/** What came of the events of a document. */
export interface PlacedEvents {
  readonly session: Session;
  /** Everything that has no place. */
  readonly problems: readonly Problem[];
  /** Whether the case itself is damaged: some of it no model could place. */
  readonly damaged: boolean;
  /** What would still count and has no place. */
  readonly notices: readonly EventUnplaced[];
}

/** Codes of problems that no other version of a model would mend. */
const damageCodes = new Set([
  'id-taken',
  'observation-unknown',
  'engine-differs',
  'suspect-differs',
  'cylinder-unknown',
  'outcome-missing',
  'likelihood-invalid',
]);

/** Records the events of a document in the names of today, those without a place so far at their turn again. What the model knows no place
 * for goes into `unplaced`, word for word; an answer it would have replaced is cleared, and equipment counts as far as it is known. */
export function placeEvents(compiled: CompiledModel, started: Session, document: CaseDocument): PlacedEvents {
  const { model } = compiled;
  const today = namesToday(model);
  const found: Problem[] = [];
  const open = new Map<string, EventUnplaced>();
  /** Feature as the document calls it -> as it stands in the case. */
  const stated = new Map<string, string>();
  let session = started;

  const tryEvent = (event: CaseEvent): readonly Problem[] => {
    const problems = findEventProblems(model, session.content, event);
    if (problems.length === 0) session = appendEvent(compiled, session, event);
    return problems;
  };

  const namedToday = (event: CaseEvent): CaseEvent => {
    const feature = event.kind === 'context-cleared' ? stated.get(event.feature) : undefined;
    return feature === undefined ? renameEvent(today, event) : { kind: 'context-cleared', feature };
  };

  /** One feature may have become several: the answer before this one stands under another of them. */
  const replaceAnswer = (event: CaseEvent, feature: string | undefined): void => {
    if (event.kind !== 'context-set' && event.kind !== 'context-cleared') return;
    const before = stated.get(event.feature);
    if (before !== undefined && before !== feature) tryEvent({ kind: 'context-cleared', feature: before });
    if (feature === undefined) stated.delete(event.feature);
    else stated.set(event.feature, feature);
  };

  for (const { event, path } of inOrder(document)) {
    const subject = subjectOf(event);
    open.delete(subject);
    const now = namedToday(event);
    const problems = tryEvent(now).map((problem) => ({ ...problem, path: path + problem.path }));
    found.push(...problems);
    if (problems.some(isDamage)) continue;
    const placed = problems.length === 0;
    replaceAnswer(event, placed && now.kind === 'context-set' ? now.feature : undefined);
    if (placed) continue;
    if (now.kind === 'equipment-set') takeKnown(now.equipment);
    const { content } = session;
    const kept = { before: content.events.length, event, reason: problems[0]!.code };
    session = { ...session, content: { ...content, unplaced: [...content.unplaced, kept] } };
    if (counts(event)) open.set(subject, { kind: 'event-unplaced', event, problems });
  }
  return { session, problems: found, damaged: found.some(isDamage), notices: [...open.values()] };

  function takeKnown(equipment: readonly string[]): void {
    const known = equipment.filter((id) => model.equipment.some((one) => one.id === id));
    if (session.content.state.equipment?.join() !== known.join()) tryEvent({ kind: 'equipment-set', equipment: known });
  }
}

function isDamage({ code }: Problem): boolean {
  return damageCodes.has(code);
}

/** All events of a document, those without a place where they belong. */
function inOrder({ events, unplaced = [] }: CaseDocument): { readonly event: CaseEvent; readonly path: string }[] {
  const kept = unplaced.map(({ before, event }, at) => ({
    before: Math.min(before, events.length),
    event,
    path: `/unplaced/${at}/event`,
  }));
  return [...events, undefined].flatMap((event, at) => [
    ...kept.filter(({ before }) => before === at),
    ...(event === undefined ? [] : [{ event, path: `/events/${at}` }]),
  ]);
}

/** What an event is about: a later one about the same replaces it. */
function subjectOf(event: CaseEvent): string {
  switch (event.kind) {
    case 'context-set':
    case 'context-cleared':
      return `feature ${event.feature}`;
    case 'result-recorded':
    case 'repair-tried':
    case 'observation-retracted':
      return `observation ${event.id}`;
    case 'access-opened':
    case 'access-closed':
      return `access ${event.access}`;
    default:
      return event.kind;
  }
}

/** Whether an event without a place is missed: what takes something back is not. */
function counts({ kind }: CaseEvent): boolean {
  return kind !== 'context-cleared' && kind !== 'access-closed';
}
