import type { Language } from '../language.ts';
import { codeWords } from './codeWords.ts';
import { formatMinutes } from './formats/formatMinutes.ts';
import { formatMoney } from './formats/formatMoney.ts';
import { formatNumber } from './formats/formatNumber.ts';
import { formatProbability } from './formats/formatProbability.ts';
import { formatTimes } from './formats/formatTimes.ts';
import { messages } from './messages.ts';
import { numberWords } from './numberWords.ts';
import { planWords } from './planWords.ts';
import { problems } from './problems/problems.ts';
import { remarkWords } from './remarkWords.ts';
import { stopAndTow } from './stopAndTow.ts';
import { usualCaution } from './usualCaution.ts';

/** German: sentences and formats. The model's labels stay in the language of the model. */
export const german: Language = {
  code: 'de',
  codeWords,
  messages,
  numberWords,
  planWords,
  problems,
  remarkWords,
  stopAndTow,
  usualCaution,
  formatNumber,
  formatMinutes,
  formatMoney,
  formatProbability,
  formatTimes,
};
