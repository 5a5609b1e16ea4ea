import type { TestNotNow } from '../../decision/advice.ts';
import type { Model } from '../../model/model.ts';
import { messages } from './messages.ts';
import { nameOf } from './nameOf.ts';

/** Why a test is not among the next steps. */
export function sentenceForNotNow(model: Model, { test: id, reason, missing }: TestNotNow): string {
  const test = nameOf(model.tests, id);
  switch (reason) {
    case 'equipment':
      return messages.needsEquipment({
        test,
        missing: messages.and(missing.map((one) => nameOf(model.equipment, one))),
      });
    case 'not-applicable':
      return messages.notApplicable({ test, missing: missing.map((fact) => describeFact(model, fact)).join(', ') });
    case 'already-done':
      return messages.alreadyDone({ test });
    case 'same-question':
      return messages.sameQuestion({ test, by: messages.and(missing.map((one) => `“${nameOf(model.tests, one)}”`)) });
  }
}

/** An intake fact given as `feature:value`. */
function describeFact(model: Model, fact: string): string {
  const [id = '', value = ''] = fact.split(':');
  const feature = model.context.find((one) => one.id === id);
  return feature === undefined ? fact : `${feature.label}: ${nameOf(feature.values, value)}`;
}
