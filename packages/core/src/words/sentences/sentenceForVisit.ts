import type { Visit } from '../../advice/visitOf.ts';
import type { Model } from '../../model/model.ts';
import type { Language } from '../languages/language.ts';
import { nameOf } from './nameOf.ts';

/** What is done in one go with a test, in which order, and what it costs together. @param best the test it stands beside, one of the visit's
 * @example
 * ```ts
 * const tests = [{ test: 'read-circuit-codes' }, { test: 'freeze-frame' }];
 * const visit = { tests, price: { amount: 21, currency: 'EUR' }, minutes: 13 };
 * const said = sentenceForVisit(model, visit, 'read-circuit-codes', english);
 * said // 'In one go, €21, 13 min in all: this, then “Freeze-frame conditions (service $02)”.'
 * ``` */
export function sentenceForVisit(
  model: Model,
  visit: Pick<Visit, 'price' | 'minutes'> & { readonly tests: readonly { readonly test: string }[] },
  best: string,
  language: Language,
): string {
  const { messages, formatMinutes, formatMoney } = language;
  const at = visit.tests.findIndex(({ test }) => test === best);
  const named = (tests: typeof visit.tests): string =>
    messages.and(tests.map(({ test }) => messages.quoted(nameOf(model.tests, test, language))));
  return messages.inOneGo({
    price: formatMoney(visit.price),
    minutes: formatMinutes(visit.minutes),
    before: named(visit.tests.slice(0, Math.max(0, at))),
    after: named(visit.tests.slice(at + 1)),
  });
}
