import type { Plan } from '../../../../plan/plan.ts';
import type { PlanLabels } from '../../../../plan/planLabels.ts';
import { planAsSvg as inLanguage } from '../../../../plan/planAsSvg.ts';
import { german } from '../german.ts';

/** A plan as a standalone SVG drawing with German words. */
export function planAsSvg(plan: Plan, labels: PlanLabels, title?: string): string {
  return inLanguage(plan, labels, title, german);
}
