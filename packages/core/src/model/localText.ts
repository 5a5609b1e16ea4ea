/** A text of the model: a plain string where it exists in one language only, else one text per language, English always among them. */
export type LocalText = string | { readonly en: string; readonly de?: string };

/** A language that a text of the model can be in. */
export type LanguageCode = keyof Exclude<LocalText, string>;
