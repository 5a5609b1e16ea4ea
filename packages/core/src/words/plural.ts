/** The form of a word that goes with a count, by the plural rules of a language (Unicode CLDR, as `Intl.PluralRules` knows them).
 * @param tag of the language, as in "de". @param forms by plural category; English and German have these two. */
export function plural(tag: string, count: number, forms: { readonly one: string; readonly other: string }): string {
  return new Intl.PluralRules(tag).select(count) === 'one' ? forms.one : forms.other;
}
