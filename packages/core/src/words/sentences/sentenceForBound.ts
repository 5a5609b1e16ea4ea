import type { Plan } from '../../plan/plan.ts';
import type { Language } from '../languages/language.ts';

/** How good a plan is at least: what no plan can cost less than. @param examined states of the search it comes from. */
export function sentenceForBound(
  { certifiedGap, lowerBound }: Pick<Plan, 'certifiedGap' | 'lowerBound'>,
  examined: number,
  { planWords, formatMoney, formatNumber }: Language,
): string {
  const parts = { bound: formatMoney(lowerBound), examined: formatNumber(examined) };
  return certifiedGap > 0 ? planWords.bound(parts) : planWords.boundReached(parts);
}
