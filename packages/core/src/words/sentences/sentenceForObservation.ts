import type { MovedCause, ObservationMove } from '../../explanation/explanation.ts';
import type { Model } from '../../model/model.ts';
import { nameOf } from './nameOf.ts';
import type { Language } from '../languages/language.ts';

// Below a quarter more likely (about one deciban) a reader would not call it a reason.
const WORTH_SAYING_DECIBANS = 1;

/** As much of a move as the sentence needs. */
type Move = Pick<ObservationMove, 'observation' | 'movers' | 'of1000'>;

/** What a result did and why, in two or three sentences with natural frequencies: "Of 1000 engines like this, 3 had “…” before this
 * result and 24 after it. …". The cause it is about is the one it moved most.
 * @example
 * ```ts
 * const said = sentenceForObservation(
 *   model,
 *   {
 *     observation: { kind: 'result', id: 'r1', test: 'coil-swap', outcome: 'follows' },
 *     movers: [{ cause: 'coil-weak', before: 0.2, after: 0.6, weightDecibans: 7.8 }],
 *     of1000: { before: { 'coil-weak': 200 }, after: { 'coil-weak': 600 } },
 *   },
 *   english,
 * );
 * const [moved, why] = said.split('. ');
 * moved // 'Of 1000 engines like this, 200 had “Ignition coil weak or failed” before this result and 600 after it'
 * why // 'The result is 6 times as likely with that cause as with any other.'
 * ``` */
export function sentenceForObservation(model: Model, step: Move, language: Language): string {
  const { messages } = language;
  const [top] = step.movers;
  if (top === undefined) {
    const { observation } = step;
    return observation.kind === 'result' && observation.faultActive === 'no'
      ? messages.saysNothing()
      : messages.movesNothing();
  }
  const counterpart = step.movers.find((mover) => mover.after > mover.before !== top.after > top.before);
  const [before, after] = countsOf(step, top, language);
  if (before === after) return messages.hardlyMoved({ cause: nameOf(model.causes, top.cause, language), after });
  const sentences = [
    messages.moved({ cause: nameOf(model.causes, top.cause, language), before, after }),
    reason(top, language),
  ];
  if (counterpart !== undefined) {
    const [was, is] = countsOf(step, counterpart, language);
    if (was !== is) {
      sentences.push(
        messages.alsoMoved({ cause: nameOf(model.causes, counterpart.cause, language), before: was, after: is }),
      );
    }
  }
  return sentences.join(' ');
}

function reason({ weightDecibans }: MovedCause, { messages, formatTimes }: Language): string {
  if (weightDecibans === Infinity) return messages.excludesOthers();
  if (weightDecibans === -Infinity) return messages.excludesIt();
  if (Math.abs(weightDecibans) < WORTH_SAYING_DECIBANS) return messages.speaksHardly();
  const times = formatTimes(10 ** (Math.abs(weightDecibans) / 10));
  return weightDecibans > 0 ? messages.speaksFor({ times }) : messages.speaksAgainst({ times });
}

function countsOf({ of1000 }: Move, { cause }: MovedCause, { messages }: Language): readonly [string, string] {
  return [messages.count(of1000.before[cause] ?? 0), messages.count(of1000.after[cause] ?? 0)];
}
