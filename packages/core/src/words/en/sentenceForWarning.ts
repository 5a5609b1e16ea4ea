import type { BeliefWarning } from '../../belief/belief.ts';
import type { Facts } from '../../belief/facts.ts';
import type { Model } from '../../model/model.ts';
import { messages } from './messages.ts';
import { nameOf } from './nameOf.ts';

/** What a reader should know about the evidence itself: told twice, repeated, or seen while the fault slept.
 * @param facts those the belief was made of; they name what the warning's ids mean. */
export function sentenceForWarning(
  model: Model,
  facts: Facts,
  { kind, items, shared, treatment }: BeliefWarning,
): string {
  const names = [...new Set(items.map((item) => describeItem(model, facts, item)))];
  switch (kind) {
    case 'same-fact':
      return isOverlap(model, shared)
        ? messages.overlap({ items: quoted(names), treatment })
        : messages.sameFact({ items: quoted(names), shared, treatment });
    case 'repeated':
      return messages.repeated({ test: nameOf(model.tests, shared), times: items.length });
    case 'asleep':
      return messages.asleep({ test: nameOf(model.tests, shared) });
  }
}

function describeItem(model: Model, { observations }: Facts, item: string): string {
  if (item.startsWith('context:')) return nameOf(model.context, item.slice('context:'.length));
  const observation = observations.find(({ id }) => id === item);
  if (observation === undefined) return item;
  return observation.kind === 'result'
    ? nameOf(model.tests, observation.test)
    : nameOf(model.repairs, observation.repair);
}

/** Overlapping intake facts share nothing with a name of its own: `shared` is then made of their ids. */
function isOverlap(model: Model, shared: string): boolean {
  return model.contextOverlaps.some(({ a, b }) => shared === `${a} and ${b}`);
}

function quoted(names: readonly string[]): string {
  return messages.and(names.map((name) => `“${name}”`));
}
