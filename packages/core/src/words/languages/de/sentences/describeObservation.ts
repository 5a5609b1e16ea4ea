import type { Observation } from '../../../../evidence/observation.ts';
import type { Model } from '../../../../model/model.ts';
import { describeObservation as inLanguage } from '../../../sentences/describeObservation.ts';
import { german } from '../german.ts';

/** An observation as a heading. */
export function describeObservation(model: Model, observation: Observation): string {
  return inLanguage(model, observation, german);
}
