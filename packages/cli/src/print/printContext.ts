import type { Context, Model } from '@faultodds/core';
import { foldText } from '../terminal/foldText.ts';
import { labelOf } from './labelOf.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** The intake answers, one a line. */
export function printContext(terminal: Terminal, model: Model, context: Context): void {
  for (const feature of model.context) {
    const value = context[feature.id];
    if (value === undefined) continue;
    terminal.write(`${foldText(`${feature.label}: ${labelOf(feature.values, value)}`, terminal.width, '  ')}\n`);
  }
}
