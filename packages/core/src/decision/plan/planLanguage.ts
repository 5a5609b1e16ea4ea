import { formatMoney } from '../../words/en/formatMoney.ts';
import { formatProbability } from '../../words/en/formatProbability.ts';
import { planWords } from '../../words/en/planWords.ts';
import type { Language } from '../../words/language.ts';

/** What a language brings to a written plan. */
export type PlanLanguage = Pick<Language, 'planWords' | 'formatMoney' | 'formatProbability'>;

/** A plan in English: what plans are written in unless they are given another language. */
export const englishPlan: PlanLanguage = { planWords, formatMoney, formatProbability };
