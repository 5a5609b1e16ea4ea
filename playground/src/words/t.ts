import { englishLabels as english } from './en.ts';

/** Every word of the screen, by place: what a language has to fill. */
export type Words = typeof english;

/** The words of the language spoken now; English until `speak` is called. Read it when drawing, never at module load. */
export let t: Words = english;

/** Takes up another language. What is already drawn keeps its words until it is drawn anew. */
export function speak(words: Words): void {
  t = words;
}
