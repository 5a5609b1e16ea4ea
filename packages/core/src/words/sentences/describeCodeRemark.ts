import type { CodeRemark } from '../../codes/codeObservations.ts';
import type { Language } from '../languages/language.ts';

/** What a reader of a list of trouble codes should know about it.
 * @example
 * ```ts
 * const said = describeCodeRemark({ kind: 'suspect-not-named', codes: ['P0301', 'P0302'] }, english);
 * said // 'P0301, P0302 name other cylinders and none names this one: is it the right one?'
 * ``` */
export function describeCodeRemark({ kind, codes }: CodeRemark, { remarkWords }: Language): string {
  return remarkWords.codes[kind](codes.join(', '));
}
