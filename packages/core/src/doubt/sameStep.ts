import type { NextStep } from '../steps/nextStep.ts';
import { stepKey } from './stepKey.ts';

/** Whether two pieces of advice propose the same step, whatever it costs.
 * @example
 * ```ts
 * const intake = beliefOf(pump, { context: {}, observations: [] });
 * const [closed, open] = [advise(pump, intake), advise(pump, intake, { openAccess: ['lid-off'] })];
 * sameStep(closed.best, open.best); // true
 * ``` */
export function sameStep(a: NextStep, b: NextStep): boolean {
  return stepKey(a) === stepKey(b);
}
