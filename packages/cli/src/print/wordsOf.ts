import type { LanguageCode } from '@faultodds/core';
import type { Language } from '@faultodds/core/words';
import { german } from '@faultodds/core/words/de';
import { english } from '@faultodds/core/words/en';

/** The language of a code, for the sentence makers of core; English where none is asked for. */
export function wordsOf(language: LanguageCode = 'en'): Language {
  return language === 'de' ? german : english;
}
