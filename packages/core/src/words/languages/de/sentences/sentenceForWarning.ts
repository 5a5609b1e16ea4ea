import type { BeliefWarning } from '../../../../belief/belief.ts';
import type { Facts } from '../../../../evidence/facts.ts';
import type { Model } from '../../../../model/model.ts';
import { sentenceForWarning as inLanguage } from '../../../sentences/sentenceForWarning.ts';
import { german } from '../german.ts';

/** What a reader should know about the evidence itself: told twice, repeated, or seen while the fault slept. */
export function sentenceForWarning(model: Model, facts: Facts, warning: BeliefWarning): string {
  return inLanguage(model, facts, warning, german);
}
