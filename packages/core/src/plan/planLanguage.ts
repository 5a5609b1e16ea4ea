import { formatMoney } from '../words/languages/en/formats/formatMoney.ts';
import { formatProbability } from '../words/languages/en/formats/formatProbability.ts';
import { planWords } from '../words/languages/en/planWords.ts';
import { stopAndTow } from '../words/languages/en/stopAndTow.ts';
import { usualCaution } from '../words/languages/en/usualCaution.ts';
import type { Language } from '../words/languages/language.ts';

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
