import { textIn, type Model } from '@faultodds/core';
import { foldText } from '../terminal/foldText.ts';
import { paint } from '../terminal/paint.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** What to be careful of, one caution a paragraph. */
export function printCautions(terminal: Terminal, model: Model, ids: readonly string[], indent = '  '): void {
  for (const id of ids) {
    const text = textIn(model.cautions.find((caution) => caution.id === id)?.text ?? id, 'en');
    terminal.write(`${paint(terminal, 'caution', foldText(`Caution: ${text}`, terminal.width, indent))}\n`);
  }
}
