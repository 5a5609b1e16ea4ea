import type { TestAdvice } from '../../advice/advice.ts';
import type { Language } from '../languages/language.ts';

/** What a test costs more if it finds the fault asleep, to stand beside its price.
 * @example
 * ```ts
 * const ifAsleep = { chance: 0.25, price: { amount: 30, currency: 'EUR' }, minutes: 18 };
 * const said = sentenceForAsleep(ifAsleep, english);
 * said // 'If the fault sleeps meanwhile (25%): make it show, and once more, €30, 18 min'
 * ``` */
export function sentenceForAsleep(
  { chance, price, minutes }: NonNullable<TestAdvice['ifAsleep']>,
  language: Language,
): string {
  return language.messages.onceMore({
    chance: language.formatProbability(chance),
    price: language.formatMoney(price),
    minutes: language.formatMinutes(minutes),
  });
}
