import type { Model } from '../../../../model/model.ts';
import {
  type RankingsWithout,
  sentenceWithoutObservation as inLanguage,
} from '../../../sentences/sentenceWithoutObservation.ts';
import { german } from '../german.ts';

/** Who would lead the ranking if one observation had never been made, beside who leads now.
 * @param at position in `explanation.observations`; `''` when there is no such observation. */
export function sentenceWithoutObservation(model: Model, explanation: RankingsWithout, at: number): string {
  return inLanguage(model, explanation, at, german);
}
