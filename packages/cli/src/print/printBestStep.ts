import { cautionsOfTest, type Advice, type Model } from '@faultodds/core';
import { sentenceForAdvice, sentenceForVisit } from '@faultodds/core/words';
import { english } from '@faultodds/core/words/en';
import { foldText } from '../terminal/foldText.ts';
import { paint } from '../terminal/paint.ts';
import { printCautions } from './printCautions.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** The best step and why, what is done in one go with it, and what to be careful of in all of that. */
export function printBestStep(terminal: Terminal, model: Model, advice: Advice, indent = '  '): void {
  const { best } = advice;
  const visit = best.kind === 'test' ? advice.visit : undefined;
  const line = (text: string): string => foldText(text, terminal.width, '  ');
  terminal.write(`${paint(terminal, 'strong', line(sentenceForAdvice(model, advice, english)))}\n`);
  if (visit !== undefined && best.kind === 'test') {
    terminal.write(`${line(sentenceForVisit(model, visit, best.test, english))}\n`);
  }
  printCautions(terminal, model, cautionsOfTest({ ...best, followUps: [] }, visit), indent);
}
