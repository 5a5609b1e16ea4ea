import type { UnusedCode } from '../../codes/codeObservations.ts';
import type { Language } from '../languages/language.ts';
import { describeCodeMeaning } from './describeCodeMeaning.ts';

/** A trouble code that made no result, with its meaning and the reason.
 * @example
 * ```ts
 * const meaning = describeTroubleCode('P0353');
 * const said = describeUnusedCode({ code: { code: 'P0353', status: 'pending' }, meaning, reason: 'other-cylinder' }, english);
 * said // 'P0353 pending (circuit of coil C): about another cylinder'
 * ``` */
export function describeUnusedCode({ code, meaning, reason }: UnusedCode, language: Language): string {
  const { remarkWords } = language;
  return remarkWords.unusedCode({
    code: code.status === 'stored' ? code.code : `${code.code} ${code.status}`,
    meaning: describeCodeMeaning(meaning, language),
    reason: remarkWords.unusedBecause[reason],
  });
}
