import type { Model } from '@faultodds/core';
import type { EvidenceConflict } from '@faultodds/core/doubt';
import { describeObservation } from '@faultodds/core/words';
import { english } from '@faultodds/core/words/en';
import { foldText } from '../terminal/foldText.ts';
import type { Terminal } from '../terminal/terminal.ts';

// One bit: seen together half as often as if they had nothing to do with each other.
const WORTH_SAYING_BITS = 1;

/** Says that results do not fit together, which pair does so worst and without which they fit best; nothing where they fit. */
export function printConflict(terminal: Terminal, model: Model, conflict: EvidenceConflict): void {
  for (const sentence of conflictSentences(model, conflict)) {
    terminal.write(`${foldText(sentence, terminal.width, '  ')}\n`);
  }
}

/** The same as sentences; none where the results fit. */
export function conflictSentences(model: Model, { totalBits, pairs, helpsMost }: EvidenceConflict): readonly string[] {
  if (totalBits <= WORTH_SAYING_BITS) return [];
  const [pair] = pairs;
  return [
    `The results do not fit together (${bits(totalBits)} of conflict): one may be wrong, or the fault is rare, not listed, or there are two at once.`,
    ...(pair === undefined
      ? []
      : [
          `Worst pair: “${describeObservation(model, pair.a, english)}” and “${describeObservation(model, pair.b, english)}”.`,
        ]),
    ...(helpsMost === undefined
      ? []
      : [
          `Check first: “${describeObservation(model, helpsMost.observation, english)}”: ${without(helpsMost.totalBitsWithout)}.`,
        ]),
  ];
}

/** Below zero the rest speaks for itself. */
function without(left: number): string {
  return left > 0 ? `without it, ${bits(left)} remain` : 'without it, the others fit together';
}

function bits(amount: number): string {
  return `${amount.toFixed(1)} bits`;
}
