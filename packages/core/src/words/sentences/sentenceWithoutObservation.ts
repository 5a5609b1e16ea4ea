import type { RankedCause } from '../../belief/belief.ts';
import type { Model } from '../../model/model.ts';
import { nameOf } from './nameOf.ts';
import type { Language } from '../languages/language.ts';

/** As much of an explanation as the sentence needs. */
export interface RankingsWithout {
  /** The last one is the ranking now. */
  readonly beliefs: readonly { readonly ranking: readonly RankedCause[] }[];
  readonly observations: readonly { readonly rankingWithout: readonly RankedCause[] }[];
}

/** Who would lead the ranking if one observation had never been made, beside who leads now.
 * @param at position in `explanation.observations`; `''` when there is no such observation.
 * @example
 * ```ts
 * const now = [{ cause: 'coil-weak', probability: 0.9, prior: 0.2 }];
 * const rankingWithout = [{ cause: 'coil-weak', probability: 0.4, prior: 0.2 }];
 * const said = sentenceWithoutObservation(model, { beliefs: [{ ranking: now }], observations: [{ rankingWithout }] }, 0, english);
 * said // 'Without this result “Ignition coil weak or failed” would lead as well, at 40% instead of 90%.'
 * ``` */
export function sentenceWithoutObservation(
  model: Model,
  explanation: RankingsWithout,
  at: number,
  language: Language,
): string {
  const { messages, formatProbability } = language;
  const leader = explanation.beliefs.at(-1)?.ranking[0];
  const other = explanation.observations[at]?.rankingWithout[0];
  if (leader === undefined || other === undefined) return '';
  const parts = {
    cause: nameOf(model.causes, other.cause, language),
    without: formatProbability(other.probability),
    now: formatProbability(leader.probability),
  };
  if (other.cause === leader.cause) {
    return parts.without === parts.now ? messages.withoutItTheSame(parts) : messages.withoutItSameLeader(parts);
  }
  return messages.withoutItOtherLeader({ ...parts, leader: nameOf(model.causes, leader.cause, language) });
}
