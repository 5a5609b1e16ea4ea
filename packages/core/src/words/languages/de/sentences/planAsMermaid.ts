import type { Plan } from '../../../../plan/plan.ts';
import type { PlanLabels } from '../../../../plan/planLabels.ts';
import { planAsMermaid as inLanguage } from '../../../../plan/planAsMermaid.ts';
import { german } from '../german.ts';

/** A plan as a Mermaid flowchart with German words. */
export function planAsMermaid(plan: Plan, labels: PlanLabels): string {
  return inLanguage(plan, labels, german);
}
