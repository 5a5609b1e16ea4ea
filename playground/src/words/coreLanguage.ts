import type { Language } from '@faultodds/core/words';
import { english } from '@faultodds/core/words/en';

/** The language that core's sentences and numbers are written in now: handed to the makers of `@faultodds/core/words`. Read it when drawing,
 * never at module load. */
export let coreLanguage: Language = english;

/** Takes up another language. */
export function setCoreLanguage(language: Language): void {
  coreLanguage = language;
}
