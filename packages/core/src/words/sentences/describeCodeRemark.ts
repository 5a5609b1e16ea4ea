import type { CodeRemark } from '../../codes/codeObservations.ts';
import type { Language } from '../languages/language.ts';

/** What a reader of a list of trouble codes should know about it. */
export function describeCodeRemark({ kind, codes }: CodeRemark, { remarkWords }: Language): string {
  return remarkWords.codes[kind](codes.join(', '));
}
