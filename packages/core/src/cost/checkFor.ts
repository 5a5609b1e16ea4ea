import type { Context } from '../evidence/facts.ts';
import type { Model, VerificationCheck } from '../model/model.ts';

/** The row of the model's verification table that applies: the first that fits. */
export function checkFor({ verification }: Model, context: Context): VerificationCheck | undefined {
  return verification.checks.find(({ when }) =>
    Object.entries(when).every(([feature, values]) => values.includes(context[feature] ?? '')),
  );
}
