import type { Plan } from '../../plan/plan.ts';
import type { Language } from '../languages/language.ts';

/** How good a plan is at least: what no plan can cost less than. @param examined states of the search it comes from.
 * @example
 * ```ts
 * const said = sentenceForBound({ certifiedGap: 0.02, lowerBound: { amount: 108, currency: 'EUR' } }, 300, english);
 * said // 'No plan costs less than €108 on average (situations examined: 300).'
 * ``` */
export function sentenceForBound(
  { certifiedGap, lowerBound }: Pick<Plan, 'certifiedGap' | 'lowerBound'>,
  examined: number,
  { planWords, formatMoney, formatNumber }: Language,
): string {
  const parts = { bound: formatMoney(lowerBound), examined: formatNumber(examined) };
  return certifiedGap > 0 ? planWords.bound(parts) : planWords.boundReached(parts);
}
