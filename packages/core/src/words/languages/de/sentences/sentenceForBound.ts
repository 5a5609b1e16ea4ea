import type { Plan } from '../../../../plan/plan.ts';
import { sentenceForBound as inLanguage } from '../../../sentences/sentenceForBound.ts';
import { german } from '../german.ts';

/** How good a plan is at least: what no plan can cost less than. @param examined places of the search it comes from. */
export function sentenceForBound(plan: Pick<Plan, 'certifiedGap' | 'lowerBound'>, examined: number): string {
  return inLanguage(plan, examined, german);
}
