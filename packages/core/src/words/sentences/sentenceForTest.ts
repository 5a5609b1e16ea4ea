import type { TestAdvice } from '../../advice/advice.ts';
import type { Language } from '../languages/language.ts';

/** One line for a test in a list of next steps: price, time, and whether it saves more than it costs.
 * @example
 * ```ts
 * const price = { amount: 20, currency: 'EUR' };
 * const netValue = { amount: 45, currency: 'EUR' };
 * sentenceForTest({ price, minutes: 10, netValue }, english) // '€20, 10 min; saves €45 more than it costs'
 * ``` */
export function sentenceForTest(
  { price, minutes, netValue }: Pick<TestAdvice, 'price' | 'minutes' | 'netValue'>,
  language: Language,
): string {
  const { messages, formatMinutes, formatMoney } = language;
  const parts = { price: formatMoney(price), minutes: formatMinutes(minutes) };
  if (netValue.amount > 0) return messages.testSaves({ ...parts, saving: formatMoney(netValue) });
  return messages.testCosts({ ...parts, loss: formatMoney({ ...netValue, amount: Math.abs(netValue.amount) }) });
}
