import type { BeliefWarning } from '../../belief/belief.ts';
import type { Facts } from '../../evidence/facts.ts';
import type { Model } from '../../model/model.ts';
import { nameOf } from './nameOf.ts';
import type { Language } from '../languages/language.ts';

/** What a reader should know about the evidence itself: what counts twice, was repeated, or was seen while the fault slept.
 * @param facts those the belief was made of; they name what the warning's ids mean.
 * @example
 * ```ts
 * const said = sentenceForWarning(model, facts, { kind: 'asleep', test: 'coil-swap', items: ['two'] }, english);
 * said // '“Swap the coil with another cylinder” was done while the fault was not present: it has no effect.'
 * ``` */
export function sentenceForWarning(model: Model, facts: Facts, warning: BeliefWarning, language: Language): string {
  const { messages } = language;
  switch (warning.kind) {
    case 'same-question':
      return messages.pairSameQuestion(partsOfPair(model, facts, warning, language));
    case 'same-fact':
      return messages.pairSameFact(partsOfPair(model, facts, warning, language));
    case 'shared-error':
      return messages.pairSharedError(partsOfPair(model, facts, warning, language));
    case 'repeated':
      return messages.repeated({ test: nameOf(model.tests, warning.test, language), times: warning.items.length });
    case 'look-missing': {
      const looks = model.tests.find(({ id }) => id === warning.test)?.follows ?? [];
      return messages.lookMissing({
        test: nameOf(model.tests, warning.test, language),
        looks: messages.or(looks.map(({ test }) => messages.quoted(nameOf(model.tests, test, language)))),
      });
    }
    case 'asleep':
      return messages.asleep({ test: nameOf(model.tests, warning.test, language) });
  }
}

/** What both parts are called, and what the model calls their common thing; overlapping intake facts have no name for it. */
function partsOfPair(
  model: Model,
  facts: Facts,
  { a, b, items }: Extract<BeliefWarning, { readonly a: string }>,
  language: Language,
): { items: string; shared: string } {
  const { messages } = language;
  const names = [...new Set(items.map((item) => describeItem(model, facts, item, language)))];
  const pair = model.dependentPairs.find((one) => one.a === a && one.b === b);
  return { items: messages.and(names.map((name) => messages.quoted(name))), shared: pair?.shared ?? '' };
}

function describeItem(model: Model, { observations }: Facts, item: string, language: Language): string {
  if (item.startsWith('context:')) return nameOf(model.context, item.slice('context:'.length), language);
  const observation = observations.find(({ id }) => id === item);
  if (observation === undefined) return item;
  return observation.kind === 'result'
    ? nameOf(model.tests, observation.test, language)
    : nameOf(model.repairs, observation.repair, language);
}
