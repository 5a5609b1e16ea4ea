import type { TestNotNow } from '../../steps/testNotNow.ts';
import type { Model } from '../../model/model.ts';
import { nameOf } from './nameOf.ts';
import type { Language } from '../languages/language.ts';

/** Why a test is not among the next steps.
 * @example
 * ```ts
 * const said = sentenceForNotNow(model, { test: 'coil-swap', reason: 'already-done', missing: [] }, english);
 * said // '“Swap the coil with another cylinder” has been done.'
 * ``` */
export function sentenceForNotNow(
  model: Model,
  { test: id, reason, missing }: Pick<TestNotNow, 'test' | 'reason' | 'missing'>,
  language: Language,
): string {
  const { messages } = language;
  const test = nameOf(model.tests, id, language);
  switch (reason) {
    case 'equipment':
      return messages.needsEquipment({
        test,
        missing: messages.and(missing.map((one) => nameOf(model.equipment, one, language))),
      });
    case 'not-applicable':
      return messages.notApplicable({
        test,
        missing: missing.map((fact) => describeFact(model, fact, language)).join(', '),
      });
    case 'nothing-to-follow':
      return messages.nothingToFollow({
        test,
        looks: messages.or([...new Set(missing)].map((one) => messages.quoted(nameOf(model.tests, one, language)))),
      });
    case 'engine-apart':
      return messages.engineApart({
        test,
        open: messages.and(missing.map((one) => messages.quoted(nameOf(model.access, one, language)))),
      });
    case 'already-done':
      return messages.alreadyDone({ test });
    case 'same-question':
      return messages.sameQuestion({
        test,
        by: messages.and(
          missing.map((one) => messages.quoted(nameOf([...model.tests, ...model.context], one, language))),
        ),
      });
  }
}

/** An intake fact given as `feature:value`. */
function describeFact(model: Model, fact: string, language: Language): string {
  const [id = '', value = ''] = fact.split(':');
  const feature = model.context.find((one) => one.id === id);
  return feature === undefined ? fact : `${feature.label}: ${nameOf(feature.values, value, language)}`;
}
