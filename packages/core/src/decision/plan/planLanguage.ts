import { formatMoney } from '../../words/en/formatMoney.ts';
import { formatProbability } from '../../words/en/formatProbability.ts';
import { planWords } from '../../words/en/planWords.ts';
import { stopAndTow } from '../../words/en/stopAndTow.ts';
import { usualCaution } from '../../words/en/usualCaution.ts';
import type { Language } from '../../words/language.ts';

/** What a language brings to a written plan. */
export type PlanLanguage = Pick<
  Language,
  'code' | 'planWords' | 'formatMoney' | 'formatProbability' | 'stopAndTow' | 'usualCaution'
>;

/** A plan in English: what plans are written in unless they are given another language. */
export const englishPlan: PlanLanguage = {
  code: 'en',
  planWords,
  formatMoney,
  formatProbability,
  stopAndTow,
  usualCaution,
};
