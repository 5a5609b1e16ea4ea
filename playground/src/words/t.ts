import { englishLabels as english } from './en.ts';

/** Every label of the page, by screen: what a language has to give. */
export type Labels = typeof english;

/** The labels in the language of the page now; English until `setLabels` is called. Read it when drawing, never at module load. */
export let t: Labels = english;

/** Takes up another language. What is already drawn keeps its words until it is drawn anew. */
export function setLabels(words: Labels): void {
  t = words;
}
