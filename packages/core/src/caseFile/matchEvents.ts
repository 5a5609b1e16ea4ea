import type { Problem } from '../errors/faultoddsError.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { makeNamesToday } from '../model/makeNamesToday.ts';
import type { CaseDocument } from '../session/caseDocument.ts';
import type { CaseEvent } from '../session/caseEvent.ts';
import type { UnplacedEventNotice } from '../session/caseNotice.ts';
import { findEventProblems } from '../session/findEventProblems.ts';
import { observationIdOf } from '../session/observationIdOf.ts';
import { observationIdsOf } from '../session/observationIdsOf.ts';
import { renameEvent } from './renameEvent.ts';
import type { Session } from '../session/session.ts';
import { stepOver } from '../session/stepOver.ts';
import type { UnplacedEvent } from '../session/unplacedEvent.ts';

/** What came of the events of a document. */
export interface MatchedEvents {
  readonly session: Session;
  /** Everything that has no place. */
  readonly problems: readonly Problem[];
  /** Whether the case itself is damaged: some of it no model could place. */
  readonly damaged: boolean;
  /** What would still count and has no place. */
  readonly notices: readonly UnplacedEventNotice[];
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
export function matchEvents(compiled: CompiledModel, started: Session, document: CaseDocument): MatchedEvents {
  const { model } = compiled;
  const today = makeNamesToday(model);
  const found: Problem[] = [];
  const open = new Map<string, UnplacedEventNotice>();
  /** Feature as the document calls it -> as it stands in the case. */
  const stated = new Map<string, string>();
  // grown in place: copied once for every event they would take time in the square of their number
  const events = [...started.content.events];
  const unplaced: UnplacedEvent[] = [...started.content.unplaced];
  const past = [...started.past];
  const ids = observationIdsOf(started.content);
  let { state } = started.content;

  const tryEvent = (event: CaseEvent): readonly Problem[] => {
    const content = { events, unplaced, state };
    const problems = findEventProblems(model, content, event, ids);
    if (problems.length > 0) return problems;
    const after = stepOver(compiled, started.start, content, event);
    events.push(event);
    past.push(after.step);
    ({ state } = after);
    note(event);
    return problems;
  };

  const note = (event: CaseEvent): void => {
    const id = observationIdOf(event);
    if (id !== undefined) ids.add(id);
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
    const isKnown = problems.length === 0;
    replaceAnswer(event, isKnown && now.kind === 'context-set' ? now.feature : undefined);
    if (isKnown) continue;
    if (now.kind === 'equipment-set') takeKnown(now.equipment);
    unplaced.push({ before: events.length, event, reason: problems[0]!.code });
    note(event);
    if (counts(event)) open.set(subject, { kind: 'event-unplaced', event, problems });
  }
  const session = { ...started, content: { events, unplaced, state }, past, future: [] };
  return { session, problems: found, damaged: found.some(isDamage), notices: [...open.values()] };

  function takeKnown(equipment: readonly string[]): void {
    const known = equipment.filter((id) => model.equipment.some((one) => one.id === id));
    if (state.equipment?.join() !== known.join()) tryEvent({ kind: 'equipment-set', equipment: known });
  }
}

function isDamage({ code }: Problem): boolean {
  return damageCodes.has(code);
}

/** All events of a document, those without a place where they belong. */
function inOrder({ events, unplaced = [] }: CaseDocument): { readonly event: CaseEvent; readonly path: string }[] {
  const before = new Map<number, { readonly event: CaseEvent; readonly path: string }[]>();
  for (const [at, one] of unplaced.entries()) {
    const position = Math.min(one.before, events.length);
    const there = before.get(position) ?? [];
    there.push({ event: one.event, path: `/unplaced/${at}/event` });
    before.set(position, there);
  }
  return [...events, undefined].flatMap((event, at) => [
    ...(before.get(at) ?? []),
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
