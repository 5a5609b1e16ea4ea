import type { LanguageCode } from '@faultodds/core';
import type { Language } from '@faultodds/core/words';
import { german } from '@faultodds/core/words/de';
import { english } from '@faultodds/core/words/en';

const words: Readonly<Record<LanguageCode, Language>> = { en: english, de: german };

/** Codes of the languages that the sentences of core can be printed in. */
export const languageCodes: readonly string[] = Object.keys(words);

/** The language of a code, for the sentence makers of core; English where none is asked for. */
export function wordsOf(language: LanguageCode = 'en'): Language {
  return words[language];
}
