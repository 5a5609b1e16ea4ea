import type { Language } from '../language.ts';
import { codeWords } from './codeWords.ts';
import { formatMinutes } from './formatMinutes.ts';
import { formatMoney } from './formatMoney.ts';
import { formatNumber } from './formatNumber.ts';
import { formatProbability } from './formatProbability.ts';
import { formatTimes } from './formatTimes.ts';
import { messages } from './messages.ts';
import { planWords } from './planWords.ts';
import { problems } from './problems.ts';
import { stopAndTow } from './stopAndTow.ts';
import { usualCaution } from './usualCaution.ts';

/** German: sentences and formats. The model's labels stay in the language of the model. */
export const german: Language = {
  code: 'de',
  codeWords,
  messages,
  planWords,
  problems,
  stopAndTow,
  usualCaution,
  formatNumber,
  formatMinutes,
  formatMoney,
  formatProbability,
  formatTimes,
};
