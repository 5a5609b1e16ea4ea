import type { ContextEffect, Model } from '@faultodds/core';
import { formatProbability } from '@faultodds/core/words/en';
import { foldText } from '../terminal/foldText.ts';
import { labelOf } from './labelOf.ts';
import type { Terminal } from '../terminal/terminal.ts';

const SHOWN = 3;

/** What one intake answer changed: the causes it moved most, what it brought in or ruled out, and whose price. Before any result. */
export function printContextEffect(terminal: Terminal, model: Model, effect: ContextEffect): void {
  const paragraph = (text: string): void => terminal.write(`${foldText(text, terminal.width, '  ')}\n`);
  const names = (ids: readonly string[], list: Model['causes'] | Model['tests']): string =>
    ids.map((id) => `“${labelOf(list, id)}”`).join(', ');
  // those that come in or go out are named below
  const switched = new Set([...effect.causesIn, ...effect.causesOut]);
  const moves = effect.causes
    .filter(({ cause }) => !switched.has(cause))
    .map(({ cause, priorWithout, priorWith }) => ({
      cause,
      was: formatProbability(priorWithout),
      now: formatProbability(priorWith),
    }))
    .filter(({ was, now }) => was !== now)
    .slice(0, SHOWN)
    .map(({ cause, was, now }) => `“${labelOf(model.causes, cause)}” ${was} to ${now}`);
  if (moves.length > 0) paragraph(`Before any result: ${moves.join('; ')}.`);
  if (effect.causesIn.length > 0) paragraph(`Now possible: ${names(effect.causesIn, model.causes)}.`);
  if (effect.causesOut.length > 0) paragraph(`Ruled out: ${names(effect.causesOut, model.causes)}.`);
  if (effect.testsIn.length > 0) paragraph(`Can now be tested: ${names(effect.testsIn, model.tests)}.`);
  const priced = Object.keys(effect.costs);
  if (priced.length > 0) {
    const all = [...model.tests, ...model.repairs, ...model.access];
    const [named, more] = [priced.slice(0, SHOWN), priced.length > SHOWN ? ' and others' : ''];
    paragraph(`Changes the price of ${named.map((id) => `“${labelOf(all, id)}”`).join(', ')}${more}.`);
  }
  const nothing = moves.length + switched.size + effect.testsIn.length + priced.length === 0;
  if (nothing) paragraph('This changes nothing visible.');
}
