import { cautionsOfTest, type Advice, type Model, type TestAdvice } from '@faultodds/core';
import type { OtherStep, SettledAdvice } from '@faultodds/core/planning';
import {
  sentenceForAsleep,
  sentenceForFollowUp,
  sentenceForNeedless,
  sentenceForOther,
  sentenceForSettled,
  sentenceForStopping,
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
import { printBestStep } from './printBestStep.ts';
import { printCautions } from './printCautions.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** The best next step and why, the next best tests and the repair plan with their prices, each with what to be careful of.
 * @param settled what looking several steps ahead makes of it */
export function printAdvice(
  terminal: Terminal,
  model: Model,
  advice: Advice,
  steps: number,
  settled: SettledAdvice,
): void {
  const paragraph = (text: string, indent = '  '): void =>
    terminal.write(`${foldText(text, terminal.width, indent)}\n`);
  const opens = (access: readonly string[]): void => {
    if (access.length > 0) paragraph(`opens ${access.map((id) => labelOf(model.access, id)).join(', then ')}`, '     ');
  };
  const needless = (step: Pick<TestAdvice, 'needless'>): void => {
    if (step.needless !== undefined) paragraph(sentenceForNeedless(step.needless, english), '     ');
  };
  const cautions = (ids: readonly string[]): void => printCautions(terminal, model, ids, '     ');
  const toBegin = (other: OtherStep | undefined): void => {
    if (other !== undefined) paragraph(sentenceForOther(other, english), '     ');
  };
  terminal.write(`${paint(terminal, 'caution', foldText(stopAndTow, terminal.width, '  '))}\n`);
  const { best, differs } = settled;
  if (differs) {
    paragraph(sentenceForSettled(model, settled, english));
    paragraph(`${formatMoney(best.price)}, ${formatMinutes(best.minutes)}`, '     ');
    opens(best.accessToOpen);
    printCautions(terminal, model, best.cautions, '     ');
  } else {
    printBestStep(terminal, model, advice, '     ');
    if (settled.steps > 0) paragraph(sentenceForSettled(model, settled, english));
  }
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
    toBegin(settled.others.find(({ step }) => step.kind === 'test' && step.test === test.test));
    for (const one of test.followUps) paragraph(sentenceForFollowUp(model, one, english), '     ');
    if (test.ifAsleep !== undefined) paragraph(sentenceForAsleep(test.ifAsleep, english), '     ');
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
    toBegin(settled.others.find((other) => other.step.kind === 'repair' && other.step.repair === step.repair));
    opens(step.accessToOpen);
    cautions([...new Set([...step.cautions, ...step.check.cautions])]);
  });
  terminal.write('\n');
  terminal.write(`${paint(terminal, 'caution', foldText(usualCaution, terminal.width, '  '))}\n`);
}
