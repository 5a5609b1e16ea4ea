import type { Model } from '../../../../model/model.ts';
import type { PlanLabels } from '../../../../plan/planLabels.ts';
import { planLabels as inLanguage } from '../../../../plan/planLabels.ts';
import { german } from '../german.ts';

/** The model's own labels, and in German how a repair or referral ends. */
export function planLabels(model: Pick<Model, 'tests' | 'repairs' | 'cautions'>): PlanLabels {
  return inLanguage(model, german);
}
