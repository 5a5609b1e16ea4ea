import type { BeliefWarning } from '../../belief/belief.ts';
import type { Facts } from '../../evidence/facts.ts';
import type { Model } from '../../model/model.ts';
import { nameOf } from './nameOf.ts';
import type { Language } from '../languages/language.ts';
import { english } from '../languages/english.ts';

/** What a reader should know about the evidence itself: told twice, repeated, or seen while the fault slept.
 * @param facts those the belief was made of; they name what the warning's ids mean. */
export function sentenceForWarning(
  model: Model,
  facts: Facts,
  { kind, items, shared, treatment }: BeliefWarning,
  language: Language = english,
): string {
  const { messages } = language;
  const quoted = (parts: readonly string[]): string => messages.and(parts.map((part) => messages.quoted(part)));
  const names = [...new Set(items.map((item) => describeItem(model, facts, item, language)))];
  switch (kind) {
    case 'same-fact':
      return isOverlap(model, shared)
        ? messages.overlap({ items: quoted(names), treatment })
        : messages.sameFact({ items: quoted(names), shared, treatment });
    case 'repeated':
      return messages.repeated({ test: nameOf(model.tests, shared, language), times: items.length });
    case 'asleep':
      return messages.asleep({ test: nameOf(model.tests, shared, language) });
  }
}

function describeItem(model: Model, { observations }: Facts, item: string, language: Language): string {
  if (item.startsWith('context:')) return nameOf(model.context, item.slice('context:'.length), language);
  const observation = observations.find(({ id }) => id === item);
  if (observation === undefined) return item;
  return observation.kind === 'result'
    ? nameOf(model.tests, observation.test, language)
    : nameOf(model.repairs, observation.repair, language);
}

/** Overlapping intake facts share nothing with a name of its own: `shared` is then made of their ids. */
function isOverlap(model: Model, shared: string): boolean {
  return model.contextOverlaps.some(({ a, b }) => shared === `${a} and ${b}`);
}
