import { contextPrior } from '../belief/contextPrior.ts';
import { sweepModel } from '../compiled/sweepModel.ts';
import { evidenceOf } from '../evidence/evidenceOf.ts';
import type { Facts } from '../evidence/facts.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';

/** P(cause | evidence): the joint, scaled by P(evidence), which cancels in every quotient. */
export function jointGivenFacts(compiled: CompiledModel, facts: Facts): Float64Array {
  const prior = contextPrior(compiled, facts.context);
  const { logEvidenceGivenRoot } = sweepModel(compiled, { likelihoods: evidenceOf(compiled, facts), targets: [] });
  const logJoint = prior.map((p, c) => Math.log(p) + logEvidenceGivenRoot[c]!);
  const largest = logJoint.reduce((a, b) => Math.max(a, b), -Infinity);
  const joint = logJoint.map((x) => Math.exp(x - largest));
  const sum = joint.reduce((a, b) => a + b, 0);
  return joint.map((x) => x / sum);
}
