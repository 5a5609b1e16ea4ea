import type { Problem } from '@faultodds/core';
import { describeProblem } from '@faultodds/core/words';
import { coreLanguage } from './coreLanguage.ts';

/** What is wrong and what to do about it, in the language spoken now, as one line. */
export function problemInWords(problem: Problem): string {
  const { message, hint } = describeProblem(problem, coreLanguage);
  return [message, hint].filter(Boolean).join('. ');
}
