import * as english from '@faultodds/core/words/en';

/** The sentences of core in one language. */
export type Sentences = typeof english;

/** Core's sentences in the language spoken now. Read it when drawing, never at module load. */
export let say: Sentences = english;

/** Takes up the sentences of another language. */
export function saySo(sentences: Sentences): void {
  say = sentences;
}
