import type { FollowUp } from '../../advice/advice.ts';
import type { Model } from '../../model/model.ts';
import type { Language } from '../languages/language.ts';
import { nameOf } from './nameOf.ts';

/** What a result of a test may call for, to stand beside its price.
 * @example
 * ```ts
 * const price = { amount: 30, currency: 'EUR' };
 * const said = sentenceForFollowUp(model, { test: 'lift-remeasured', price, chance: 0.12 }, english);
 * said // 'If something is seen (12%): €30 more, for “Cover off: lift measured anew, against both neighbours”'
 * ``` */
export function sentenceForFollowUp(
  model: Model,
  { test, price, chance }: Pick<FollowUp, 'test' | 'price' | 'chance'>,
  language: Language,
): string {
  return language.messages.thenPerhaps({
    price: language.formatMoney(price),
    chance: language.formatProbability(chance),
    test: nameOf(model.tests, test, language),
  });
}
