import type { Language } from '../language.ts';
import { codeWords } from './codeWords.ts';
import { formatMinutes } from './formatMinutes.ts';
import { formatMoney } from './formatMoney.ts';
import { formatProbability } from './formatProbability.ts';
import { formatTimes } from './formatTimes.ts';
import { messages } from './messages.ts';
import { planWords } from './planWords.ts';
import { problems } from './problems.ts';
import { stopAndTow } from './stopAndTow.ts';
import { usualCaution } from './usualCaution.ts';

/** English: what the sentence makers use unless they are given another language. */
export const english: Language = {
  code: 'en',
  codeWords,
  messages,
  planWords,
  problems,
  stopAndTow,
  usualCaution,
  formatNumber: String,
  formatMinutes,
  formatMoney,
  formatProbability,
  formatTimes,
};
