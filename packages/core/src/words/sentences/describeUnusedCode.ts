import type { UnusedCode } from '../../codes/codeObservations.ts';
import type { Language } from '../languages/language.ts';
import { describeCodeMeaning } from './describeCodeMeaning.ts';

/** A trouble code that made no result, with its meaning and the reason. */
export function describeUnusedCode({ code, meaning, reason }: UnusedCode, language: Language): string {
  const { remarkWords } = language;
  return remarkWords.unusedCode({
    code: code.status === 'stored' ? code.code : `${code.code} ${code.status}`,
    meaning: describeCodeMeaning(meaning, language),
    reason: remarkWords.unusedBecause[reason],
  });
}
