import type { Language } from '../languages/language.ts';

/** What may be spent on a plan, and what is left beyond it; nothing is said where there is no limit. @param currency of the plan.
 * @example sentenceForLimits({ minutes: 90 }, 'EUR', english) // 'At most 1 h 30 min of work may be spent; beyond that only the referral is left.' */
export function sentenceForLimits(
  { minutes = Infinity, money = Infinity }: { readonly minutes?: number; readonly money?: number },
  currency: string,
  { planWords, formatMinutes, formatMoney }: Language,
): string {
  const spent = [
    ...(minutes === Infinity ? [] : [planWords.workUpTo({ time: formatMinutes(minutes) })]),
    ...(money === Infinity ? [] : [formatMoney({ amount: money, currency })]),
  ];
  return spent.length === 0 ? '' : planWords.limits({ spent: spent.join(planWords.and) });
}
