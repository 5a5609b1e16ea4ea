import type { ObservationMove } from '../../../../explanation/explanation.ts';
import type { Model } from '../../../../model/model.ts';
import { sentenceForObservation as inLanguage } from '../../../sentences/sentenceForObservation.ts';
import { german } from '../german.ts';

/** What a result did and why, in two or three sentences with natural frequencies. */
export function sentenceForObservation(model: Model, step: ObservationMove): string {
  return inLanguage(model, step, german);
}
