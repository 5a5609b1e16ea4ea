import type { Facts } from '../evidence/facts.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { VerificationCheck } from '../model/model.ts';
import type { ProposedRepair } from '../steps/proposedRepair.ts';
import { stepFactsOf } from '../steps/stepFactsOf.ts';
import { triedBy } from '../evidence/triedBy.ts';
import { checkFor } from '../cost/checkFor.ts';
import type { Circumstances } from '../cost/circumstances.ts';

/** What proves a repair that seems to have cured: how it is driven, when it counts as proved, and what comes first. Price, minutes, access
 * and cautions are those of the drive. */
export interface ProofOfRepair extends ProposedRepair {
  readonly check: VerificationCheck;
  /** When the repair counts as proved. */
  readonly accept: string;
  /** What is done, in this order. */
  readonly order: readonly string[];
}

/** What proves the last repair, while it is the latest on record and is recorded as having cured, as a repair or as the test of the same kind;
 * `undefined` otherwise.
 * @throws EvidenceError `access-unknown`
 * @example
 * ```ts
 * const later = recordEvent(compiled, session, { kind: 'repair-tried', id: 'r1', repair: 'replace-coil', cured: true });
 * proofOfRepair(compiled, factsOf(caseState(later)))?.repair // 'replace-coil'
 * ``` */
export function proofOfRepair(
  compiled: CompiledModel,
  { context, observations }: Facts,
  circumstances: Circumstances = {},
): ProofOfRepair | undefined {
  const { model } = compiled;
  const last = observations.at(-1);
  const [repair] = last === undefined ? [] : triedBy(model, last, true);
  if (repair === undefined) return undefined;
  const check = checkFor(model, context);
  if (check === undefined) return undefined;
  const { accept, order } = model.verification;
  const drive = stepFactsOf(compiled, context, circumstances, { kind: 'proof-drive' });
  return { repair, ...drive, check, accept: accept.monitorRun, order };
}
