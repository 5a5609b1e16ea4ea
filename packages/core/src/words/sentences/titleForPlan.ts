import type { Language } from '../languages/language.ts';

/** Title of the plan of a case that is called `title`.
 * @example titleForPlan('Rough when cold', english) // 'What to do next: Rough when cold' */
export function titleForPlan(title: string, { planWords }: Language): string {
  return planWords.titleOfCase(title);
}
