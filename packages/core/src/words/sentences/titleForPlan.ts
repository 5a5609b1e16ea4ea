import type { Language } from '../languages/language.ts';

/** Title of the plan of a case that is called `title`. */
export function titleForPlan(title: string, { planWords }: Language): string {
  return planWords.titleOfCase(title);
}
