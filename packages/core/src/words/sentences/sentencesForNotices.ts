import type { Model } from '../../model/model.ts';
import type { ModelIdentity } from '../../model/modelIdentity.ts';
import type { CaseEvent } from '../../session/caseEvent.ts';
import type { CaseNotice, UnplacedEventNotice } from '../../session/caseNotice.ts';
import type { Language } from '../languages/language.ts';
import { describeProblem } from './describeProblem.ts';
import { nameOf } from './nameOf.ts';

// of entries without a place; the case holds them all
const LISTED = 5;

/** What a reader should know about a case that was opened: a sentence for a model that differs, one for an unknown cause, one for all
 * entries that the model does not know. @param notices those of the session.
 * @example
 * ```ts
 * const said = sentencesForNotices(model, [{ kind: 'cause-unknown', cause: 'gremlin', problems: [] }], english);
 * said // ['The cause this case names, “gremlin”, is not in this model.']
 * ``` */
export function sentencesForNotices(
  model: Model,
  notices: readonly CaseNotice[],
  language: Language,
): readonly string[] {
  const { messages } = language;
  const unplaced = notices.filter((one) => one.kind === 'event-unplaced');
  const others = notices.flatMap((one): string[] => {
    switch (one.kind) {
      case 'model-differs':
        return [sentenceForModels(one.made, one.here, language)];
      case 'cause-unknown':
        return [messages.causeUnknown({ cause: one.cause })];
      case 'event-unplaced':
        return [];
    }
  });
  if (unplaced.length === 0) return others;
  const items = unplaced.slice(0, LISTED).map((one) => describeUnplaced(model, one, language));
  const more = unplaced.length - items.length;
  return [...others, messages.unplaced({ count: unplaced.length, items: items.join('; '), more })];
}

function sentenceForModels(made: ModelIdentity, here: ModelIdentity, { messages }: Language): string {
  if (made.id === here.id && made.version === here.version) {
    return messages.madeWithOtherContents({ model: made.id, version: made.version, made: made.hash, here: here.hash });
  }
  const named = ({ id, version }: ModelIdentity): string => messages.modelVersion({ model: id, version });
  return messages.madeWithOtherVersion({ made: named(made), here: named(here) });
}

function describeUnplaced(model: Model, { event, problems }: UnplacedEventNotice, language: Language): string {
  const { message, hint } = describeProblem(problems[0]!, language);
  return language.messages.unplacedItem({ what: nameOfEvent(model, event, language), message, hint });
}

function nameOfEvent(model: Model, event: CaseEvent, language: Language): string {
  switch (event.kind) {
    case 'result-recorded': {
      const test = nameOf(model.tests, event.test, language);
      const outcomes = model.tests.find(({ id }) => id === event.test)?.outcomes ?? [];
      const outcome = event.outcome === undefined ? undefined : nameOf(outcomes, event.outcome, language);
      return outcome === undefined ? test : language.messages.result({ test, outcome });
    }
    case 'context-set': {
      const values = model.context.find(({ id }) => id === event.feature)?.values ?? [];
      return `${nameOf(model.context, event.feature, language)}: ${nameOf(values, event.value, language)}`;
    }
    case 'repair-tried':
      return nameOf(model.repairs, event.repair, language);
    case 'access-opened':
    case 'access-closed':
      return nameOf(model.access, event.access, language);
    case 'equipment-set':
      return event.equipment.filter((id) => !model.equipment.some((one) => one.id === id)).join(', ');
    default:
      return event.kind;
  }
}
