import type { Language } from './language.ts';
import { codeWords } from './en/codeWords.ts';
import { formatMinutes } from './en/formats/formatMinutes.ts';
import { formatMoney } from './en/formats/formatMoney.ts';
import { formatProbability } from './en/formats/formatProbability.ts';
import { formatTimes } from './en/formats/formatTimes.ts';
import { messages } from './en/messages.ts';
import { numberWords } from './en/numberWords.ts';
import { planWords } from './en/planWords.ts';
import { problems } from './en/problems/problems.ts';
import { remarkWords } from './en/remarkWords.ts';
import { stopAndTow } from './en/stopAndTow.ts';
import { usualCaution } from './en/usualCaution.ts';

/** English: what the sentence makers use unless they are given another language. */
export const english: Language = {
  code: 'en',
  codeWords,
  messages,
  numberWords,
  planWords,
  problems,
  remarkWords,
  stopAndTow,
  usualCaution,
  formatNumber: String,
  formatMinutes,
  formatMoney,
  formatProbability,
  formatTimes,
};
