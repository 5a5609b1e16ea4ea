import type { TestAdvice } from '../../advice/advice.ts';
import type { Language } from '../languages/language.ts';

/** One line for a test in a list of next steps: price, time, and whether it saves more than it costs. */
export function sentenceForTest({ price, minutes, netValue }: TestAdvice, language: Language): string {
  const { messages, formatMinutes, formatMoney } = language;
  const parts = { price: formatMoney(price), minutes: formatMinutes(minutes) };
  if (netValue.amount > 0) return messages.testSaves({ ...parts, saving: formatMoney(netValue) });
  return messages.testCosts({ ...parts, loss: formatMoney({ ...netValue, amount: Math.abs(netValue.amount) }) });
}
