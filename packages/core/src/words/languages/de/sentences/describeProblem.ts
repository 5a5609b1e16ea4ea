import type { Problem } from '../../../../errors/faultoddsError.ts';
import { describeProblem as inLanguage } from '../../../sentences/describeProblem.ts';
import { german } from '../german.ts';

/** What is wrong and what to do about it. A problem that brings no wording keeps its own. */
export function describeProblem(problem: Pick<Problem, 'wording' | 'hint'> & { readonly message?: string }): {
  readonly message: string;
  readonly hint: string;
} {
  return inLanguage(problem, german);
}
