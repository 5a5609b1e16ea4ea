import { cautionsOfTest, type Advice, type Model, type TestAdvice } from '@faultodds/core';
import {
  sentenceForAdvice,
  sentenceForNeedless,
  sentenceForStopping,
  sentenceForFollowUp,
  sentenceForTest,
} from '@faultodds/core/words';
import {
  english,
  formatMinutes,
  formatMoney,
  formatProbability,
  stopAndTow,
  usualCaution,
} from '@faultodds/core/words/en';
import { foldText } from '../terminal/foldText.ts';
import { labelOf } from './labelOf.ts';
import { paint } from '../terminal/paint.ts';
import { printCautions } from './printCautions.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** The best next step and why, the next best tests and the repair plan with their prices, each with what to be careful of. */
export function printAdvice(terminal: Terminal, model: Model, advice: Advice, steps: number): void {
  const paragraph = (text: string, indent = '  '): void =>
    terminal.write(`${foldText(text, terminal.width, indent)}\n`);
  const opens = (access: readonly string[]): void => {
    if (access.length > 0) paragraph(`opens ${access.map((id) => labelOf(model.access, id)).join(', then ')}`, '     ');
  };
  const needless = (step: Pick<TestAdvice, 'needless'>): void => {
    if (step.needless !== undefined) paragraph(sentenceForNeedless(step.needless, english), '     ');
  };
  const cautions = (ids: readonly string[]): void => printCautions(terminal, model, ids, '     ');
  terminal.write(`${paint(terminal, 'caution', foldText(stopAndTow, terminal.width, '  '))}\n`);
  paragraph(sentenceForAdvice(model, advice, english));
  printCautions(terminal, model, advice.best.cautions, '     ');
  if (advice.proof !== undefined) {
    terminal.write(`\n  ${paint(terminal, 'strong', 'In this order')}\n`);
    advice.proof.order.forEach((step, at) => paragraph(`${at + 1}. ${step}`));
  }
  paragraph(sentenceForStopping(model, advice, english));

  const tests = advice.tests.slice(0, steps);
  if (tests.length > 0) terminal.write(`\n  ${paint(terminal, 'strong', 'Tests, best value for their price first')}\n`);
  tests.forEach((test, at) => {
    paragraph(`${at + 1}. ${labelOf(model.tests, test.test)}`);
    paragraph(sentenceForTest(test, english), '     ');
    needless(test);
    for (const one of test.followUps) paragraph(sentenceForFollowUp(model, one, english), '     ');
    opens(test.accessToOpen);
    cautions(cautionsOfTest(test));
  });

  const { steps: repairs, expectedCost } = advice.repairNow;
  const shown = repairs.slice(0, steps);
  if (shown.length > 0) {
    terminal.write(
      `\n  ${paint(terminal, 'strong', 'Repairs, without further tests')}: ${formatMoney(expectedCost)} on average\n`,
    );
  }
  shown.forEach((step, at) => {
    paragraph(`${at + 1}. ${labelOf(model.repairs, step.repair)}`);
    const chance = formatProbability(step.cures);
    paragraph(
      `${formatMoney(step.price)}, ${formatMinutes(step.minutes)}; chance that it fixes the fault: ${chance}`,
      '     ',
    );
    needless(step);
    opens(step.accessToOpen);
    cautions([...new Set([...step.cautions, ...step.check.cautions])]);
  });
  terminal.write('\n');
  terminal.write(`${paint(terminal, 'caution', foldText(usualCaution, terminal.width, '  '))}\n`);
}
