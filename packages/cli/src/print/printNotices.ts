import type { LanguageCode, Model, Session } from '@faultodds/core';
import { sentencesForNotices } from '@faultodds/core/words';
import { foldText } from '../terminal/foldText.ts';
import type { Terminal } from '../terminal/terminal.ts';
import { wordsOf } from './wordsOf.ts';

/** Prints what opening a case had to tell: a model that differs, entries without a place. */
export function printNotices(terminal: Terminal, model: Model, { notices }: Session, language?: LanguageCode): void {
  for (const sentence of sentencesForNotices(model, notices, wordsOf(language))) {
    terminal.write(`${foldText(sentence, terminal.width, '  ')}\n`);
  }
}
