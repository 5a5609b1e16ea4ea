import type { TestAdvice } from '../../decision/advice.ts';
import { formatMinutes } from './formatMinutes.ts';
import { formatMoney } from './formatMoney.ts';
import { messages } from './messages.ts';

/** One line for a test in a list of next steps: price, time, and whether it saves more than it costs. */
export function sentenceForTest({ price, netValue }: TestAdvice): string {
  const parts = { price: formatMoney(price.total), minutes: formatMinutes(price.minutes) };
  if (netValue.amount > 0) return messages.testSaves({ ...parts, saving: formatMoney(netValue) });
  return messages.testCosts({ ...parts, loss: formatMoney({ ...netValue, amount: Math.abs(netValue.amount) }) });
}
