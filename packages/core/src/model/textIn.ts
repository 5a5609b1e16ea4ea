import type { LocalText, LanguageCode } from './localText.ts';

/** A text of the model in one language; in English where it is not written in that one.
 * @example textIn({ en: 'Let it cool.', de: 'Abkühlen lassen.' }, 'de') // 'Abkühlen lassen.' */
export function textIn(text: LocalText, language: LanguageCode): string {
  return typeof text === 'string' ? text : (text[language] ?? text.en);
}
