import type { Language } from '../words/languages/language.ts';

/** What a language brings to a written plan. */
export type PlanLanguage = Pick<
  Language,
  'code' | 'planWords' | 'formatMoney' | 'formatProbability' | 'stopAndTow' | 'usualCaution'
>;
