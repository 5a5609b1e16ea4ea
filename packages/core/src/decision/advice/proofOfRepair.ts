import type { Context, Facts } from '../../belief/facts.ts';
import type { Model, VerificationCheck } from '../../model/model.ts';

/** What proves a repair that seems to have cured: how it is driven, when it counts as proved, and what comes first. */
export interface ProofOfRepair {
  readonly repair: string;
  readonly check: VerificationCheck;
  /** When the repair counts as proved. */
  readonly accept: string;
  /** What is done, in this order. */
  readonly order: readonly string[];
}

/** What proves the last repair, while it is the latest on record and is recorded as having cured; `undefined` otherwise. */
export function proofOfRepair(model: Model, { context, observations }: Facts): ProofOfRepair | undefined {
  const last = observations.at(-1);
  if (last?.kind !== 'repair-tried' || !last.cured) return undefined;
  const check = checkFor(model, context);
  if (check === undefined) return undefined;
  const { accept, order } = model.verification;
  return { repair: last.repair, check, accept: accept.monitorRun, order };
}

/** The row of the model's verification table that applies: the first that fits. */
export function checkFor({ verification }: Model, context: Context): VerificationCheck | undefined {
  return verification.checks.find(({ when }) =>
    Object.entries(when).every(([feature, values]) => values.includes(context[feature] ?? '')),
  );
}
