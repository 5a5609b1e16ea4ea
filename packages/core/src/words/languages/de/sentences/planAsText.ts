import type { Plan } from '../../../../plan/plan.ts';
import type { PlanLabels } from '../../../../plan/planLabels.ts';
import { planAsText as inLanguage } from '../../../../plan/planAsText.ts';
import { german } from '../german.ts';

/** A plan as indented text in German, two blanks a level. */
export function planAsText(plan: Plan, labels: PlanLabels): string {
  return inLanguage(plan, labels, german);
}
