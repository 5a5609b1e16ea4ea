import type { NextStep } from '../steps/nextStep.ts';
import { stepKey } from './stepKey.ts';

/** Whether two pieces of advice propose the same step, whatever it costs. */
export function sameStep(a: NextStep, b: NextStep): boolean {
  return stepKey(a) === stepKey(b);
}
