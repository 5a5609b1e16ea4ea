import { planWords } from '../planWords.ts';

/** Title of the plan of a case that is called `title`. */
export function titleForPlan(title: string): string {
  return planWords.titleOfCase(title);
}
