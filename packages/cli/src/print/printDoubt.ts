import type { Advice, Model } from '@faultodds/core';
import { describeNumber } from '@faultodds/core/words';
import { english, formatProbability } from '@faultodds/core/words/en';
import type { Doubt } from './measureDoubt.ts';
import { foldText } from '../terminal/foldText.ts';
import { labelOf } from './labelOf.ts';
import type { Terminal } from '../terminal/terminal.ts';

const FLIPS_SHOWN = 4;
// what lies beyond plausible is there to show how far it is
const UNLIKELY_SHOWN = 2;

/** How sure the ranking and the advice are: the range of every cause over plausible models, the share of them that advise the same, and
 * the few numbers that would put another cause first. */
export function printDoubt(terminal: Terminal, model: Model, doubt: Doubt, { top }: { readonly top: number }): void {
  const paragraph = (text: string, indent = '  '): void =>
    terminal.write(`${foldText(text, terminal.width, indent)}\n`);
  const { ranking, advice, leading, flips } = doubt;
  paragraph(`Range of each cause over ${ranking.draws} plausible models (5 to 95 %):`);
  for (const { cause, probability, low, high, leads } of ranking.causes.slice(0, top)) {
    const range = `${formatProbability(low)} to ${formatProbability(high)}`;
    paragraph(
      `${labelOf(model.causes, cause)}: ${range}, best estimate ${formatProbability(probability)}; leads in ${shareOf(leads)}`,
      '     ',
    );
  }
  paragraph(
    `Same advice in ${shareOf(advice.share)} of ${advice.draws} plausible models: ${nameOfStep(model, advice.best)}.`,
  );
  for (const { best, share } of advice.others.slice(0, 2)) {
    paragraph(`In ${shareOf(share)}: ${nameOfStep(model, best)}`, '     ');
  }
  const leader = labelOf(model.causes, leading);
  const likely = flips.filter(({ flip }) => flip?.withinRange === true);
  if (flips.length === 0) paragraph(`No single number of the model would take the lead from “${leader}”.`);
  else if (likely.length === 0)
    paragraph(`No single number would take the lead from “${leader}” within its plausible range. Beyond it:`);
  else paragraph(`“${leader}” would lose the lead, everything else unchanged, with:`);
  for (const { path, value, low, high, flip } of likely.length > 0
    ? likely.slice(0, FLIPS_SHOWN)
    : flips.slice(0, UNLIKELY_SHOWN)) {
    if (flip === undefined) continue;
    const side = flip.at > value ? 'above' : 'below';
    const now = `now ${digits(value)}, plausible ${digits(low)} to ${digits(high)}`;
    paragraph(
      `${describeNumber(model, path, english)}: ${side} ${digits(flip.at)} (${now}), then “${labelOf(model.causes, flip.cause)}” leads`,
      '     ',
    );
  }
  paragraph(`Drawn with seed ${ranking.seed}; the same result every time.`);
}

function nameOfStep(model: Model, best: Advice['best']): string {
  switch (best.kind) {
    case 'test':
      return `test “${labelOf(model.tests, best.test)}”`;
    case 'repair':
      return `repair “${labelOf(model.repairs, best.repair)}”`;
    case 'refer':
      return 'refer it to a specialist';
    case 'prove':
      return `confirm “${labelOf(model.repairs, best.repair)}”`;
  }
}

/** A share of draws: none and all are said so, since so many draws prove no more. */
function shareOf(share: number): string {
  if (share === 0) return 'none';
  return share === 1 ? 'all' : formatProbability(share);
}

function digits(value: number): string {
  return String(Number(value.toPrecision(2)));
}
