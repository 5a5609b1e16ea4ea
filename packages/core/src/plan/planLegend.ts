import { cautionsOfPlan } from './cautionsOfPlan.ts';
import { hazardMark } from './hazardMark.ts';
import type { Plan } from './plan.ts';
import type { PlanLabels } from './planLabels.ts';
import type { PlanLanguage } from './planLanguage.ts';

/** What stands below every written or drawn plan, line by line: each caution in full with its mark, when to stop and have the car towed,
 * and whose procedure comes first. */
export function planLegend(
  { root }: Plan,
  labels: PlanLabels,
  { planWords, stopAndTow, usualCaution }: PlanLanguage,
): readonly string[] {
  const cautions = cautionsOfPlan(root);
  return [
    planWords.cautions,
    ...cautions.map((id) => `${hazardMark([id], cautions)} ${labels.caution(id)}`),
    stopAndTow,
    usualCaution,
  ];
}
