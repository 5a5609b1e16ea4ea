import type { Model } from '@faultodds/core';
import type { TestWhileOpen, WhatItTakes } from '@faultodds/core/planning';
import { formatMinutes, formatMoney, formatProbability } from '@faultodds/core/words/en';
import { foldText } from '../terminal/foldText.ts';
import { labelOf } from './labelOf.ts';
import { paint } from '../terminal/paint.ts';
import { printCautions } from './printCautions.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** Opening something: what it would take, and the tests behind it. */
export interface Opening {
  readonly access: string;
  readonly takes: WhatItTakes;
  readonly looks: readonly TestWhileOpen[];
}

/** When it would be time to open something, what could bring that about, and what to look at while it is open. */
export function printOpening(terminal: Terminal, model: Model, { access, takes, looks }: Opening): void {
  const paragraph = (text: string, indent = '  '): void =>
    terminal.write(`${foldText(text, terminal.width, indent)}\n`);
  const heading = (text: string): void => terminal.write(`\n${paint(terminal, 'strong', text)}\n`);
  const name = labelOf(model.access, access);
  heading(`When to open: ${name}`);
  paragraph(sentenceFor(takes));
  if (takes.status !== 'already-open') printCautions(terminal, model, takes.step.cautions, '     ');
  if (takes.tests !== undefined) {
    const { tests, price, reachedIfTrue, reachedIfFalse, isLikely } = takes.tests;
    const named = tests.map(({ test }) => `“${labelOf(model.tests, test)}”`).join(', then ');
    paragraph(
      `${isLikely ? 'Cheapest tests that probably decide it' : 'Tests with the best chance of deciding it, though below one in two'}: ${named}, ${formatMoney(price)} in all. It gets there in ${formatProbability(reachedIfTrue)} if it is one of those causes, in ${formatProbability(reachedIfFalse)} if it is not.`,
    );
    const { examined, unexamined } = takes.search;
    if (unexamined > 0) {
      paragraph(`${examined} sequences of tests were examined, ${unexamined} were not: there may be a cheaper one.`);
    }
    const cautions = tests.flatMap((test) => test.cautions);
    printCautions(terminal, model, [...new Set(cautions)], '     ');
  }
  const worth = looks.filter(({ pays }) => pays);
  const others = looks.filter(({ pays }) => !pays);
  heading(worth.length > 0 ? 'While it is open, worth doing' : 'While it is open, no test is worth its price');
  for (const { advice, priceLater } of worth) {
    paragraph(labelOf(model.tests, advice.test));
    paragraph(
      `${formatMoney(advice.price)} now, ${formatMinutes(advice.minutes)}; ${formatMoney(priceLater)} on another day`,
      '     ',
    );
    printCautions(terminal, model, advice.cautions, '     ');
  }
  if (worth.length > 0 && others.length > 0) {
    paragraph(
      `Not worth their price now: ${others.map(({ advice }) => labelOf(model.tests, advice.test)).join('; ')}.`,
    );
    const cautions = new Set(others.flatMap(({ advice }) => advice.cautions));
    printCautions(terminal, model, [...cautions], '     ');
  }
}

function sentenceFor({ status, probability, threshold }: WhatItTakes): string {
  const now = formatProbability(probability);
  const from = threshold === undefined ? '' : formatProbability(threshold);
  switch (status) {
    case 'already-open':
      return 'It is open already.';
    case 'impossible':
      return 'None of the causes behind it is possible here.';
    case 'already-best':
      return `Open it: the causes behind it together have ${now}${from === '' ? '' : `, and opening is the best step from ${from}`}.`;
    case 'reachable':
      return `Not yet: the causes behind it together have ${now}; opening would be the best step from ${from}.`;
    case 'never':
      return `The causes behind it together have ${now}. Even if they were certain, another step would be better.`;
  }
}
