import type { NextStep } from '../steps/nextStep.ts';

/** Which step is advised, whatever it costs: equal for the same step. */
export function stepKey(step: NextStep): string {
  switch (step.kind) {
    case 'test':
      return `test ${step.test}`;
    case 'repair':
    case 'prove':
      return `${step.kind} ${step.repair}`;
    case 'refer':
      return step.kind;
  }
}
