import type { Advice, Model } from '@faultodds/core';
import { formatProbability } from '@faultodds/core/words/en';
import type { Doubt } from './doubtOf.ts';
import { foldText } from './foldText.ts';
import { labelOf } from './labelOf.ts';
import { nameOfNumber } from './nameOfNumber.ts';
import type { Terminal } from './terminal.ts';

const FLIPS_SHOWN = 4;

/** How sure the ranking and the advice are: the range of every cause over plausible models, the share of them that advise the same, and
 * the few numbers that would put another cause first. */
export function printDoubt(terminal: Terminal, model: Model, doubt: Doubt, { top }: { readonly top: number }): void {
  const paragraph = (text: string, indent = '  '): void =>
    terminal.write(`${foldText(text, terminal.width, indent)}\n`);
  const { ranking, advice, leading, flips } = doubt;
  paragraph(`In 9 of 10 of ${ranking.draws} plausible models the probability lies between:`);
  for (const { cause, probability, low, high, leads } of ranking.causes.slice(0, top)) {
    const range = `${formatProbability(low)} and ${formatProbability(high)}`;
    paragraph(
      `${labelOf(model.causes, cause)}: ${range} (best estimate ${formatProbability(probability)}); leads in ${formatProbability(leads)}`,
      '     ',
    );
  }
  paragraph(
    `Of ${advice.draws} plausible models, ${formatProbability(advice.share)} advise the same: ${nameOfStep(model, advice.best)}.`,
  );
  for (const { best, share } of advice.others.slice(0, 2)) {
    paragraph(`${formatProbability(share)} advise: ${nameOfStep(model, best)}`, '     ');
  }
  const leader = labelOf(model.causes, leading);
  if (flips.length === 0) paragraph(`No single number of the model would take the lead from “${leader}”.`);
  else paragraph(`“${leader}” would lose the lead, everything else as it is:`);
  for (const { path, value, low, high, flip } of flips.slice(0, FLIPS_SHOWN)) {
    if (flip === undefined) continue;
    const side = flip.at > value ? 'above' : 'below';
    const plausible = `${digits(low)} to ${digits(high)}`;
    paragraph(
      `to “${labelOf(model.causes, flip.cause)}” ${side} ${digits(flip.at)}: ${nameOfNumber(model, path)} (now ${digits(value)}; plausible ${plausible}${flip.withinRange ? '' : ', so hardly'})`,
      '     ',
    );
  }
  paragraph(`Drawn with seed ${ranking.seed}; the same every time.`);
}

/** The best step of an advice, in words. */
export function nameOfStep(model: Model, best: Advice['best']): string {
  switch (best.kind) {
    case 'test':
      return `test “${labelOf(model.tests, best.test)}”`;
    case 'repair':
      return `repair “${labelOf(model.repairs, best.repair)}”`;
    case 'refer':
      return 'hand it on';
  }
}

function digits(value: number): string {
  return String(Number(value.toPrecision(2)));
}
