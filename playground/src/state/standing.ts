import type { NextStep } from '@faultodds/core';
import { sameStep } from '@faultodds/core/doubt';
import type { SettledAdvice } from '@faultodds/core/planning';

/** The step that stands for the case as it is now. Open until looking further ahead has settled or a second is over: until then nothing is
 * recorded for it. Then it is fixed; what turns out better later stands beside it and never replaces it. */
export interface Standing {
  readonly isOpen: boolean;
  /** What the step was fixed by; absent while open, and where one step ahead is all there is. */
  readonly settled?: SettledAdvice;
  /** A later answer that begins with another step. */
  readonly better?: SettledAdvice;
}

/** Nothing is known yet. */
export const OPEN: Standing = { isOpen: true };

/** The second is over: what one step ahead says stands. */
export function fix(standing: Standing): Standing {
  return standing.isOpen ? { ...standing, isOpen: false } : standing;
}

/** An answer came. @param oneStep what one step ahead says */
export function takeAnswer(standing: Standing, answer: SettledAdvice, oneStep: NextStep): Standing {
  const { isOpen, settled } = standing;
  if (isOpen) return answer.isSettled ? { isOpen: false, settled: answer } : standing;
  if (!sameStep(answer.best, settled?.best ?? oneStep)) return { ...standing, better: answer };
  return { isOpen, settled: settled ?? answer };
}
