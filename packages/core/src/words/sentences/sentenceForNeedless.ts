import type { NeedlessOpening } from '../../advice/advice.ts';
import type { Language } from '../languages/language.ts';

/** What the openings of a step count for beyond its price, to stand beside it.
 * @example
 * ```ts
 * const said = sentenceForNeedless({ expected: 0.5, counted: { amount: 60, currency: 'EUR' } }, english);
 * said // 'It may open the engine for nothing: €60 counts against it beyond its price'
 * ``` */
export function sentenceForNeedless({ counted }: NeedlessOpening, language: Language): string {
  return language.messages.countsNeedless({ counted: language.formatMoney(counted) });
}
