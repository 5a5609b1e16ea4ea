import * as german from '@faultodds/core/words/de';
import * as english from '@faultodds/core/words/en';

/** Languages that core's sentences can be printed in. */
export type LanguageCode = 'en' | 'de';

/** The sentences of core in a language; English where none is asked for. */
export function wordsOf(language: LanguageCode = 'en'): typeof english {
  return language === 'de' ? german : english;
}
