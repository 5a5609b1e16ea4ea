import { EvidenceError } from '../errors/evidenceError.ts';
import { problemFor } from '../validation/problemFor.ts';

/** Bayes' rule over the causes, shifted by the largest term so that long evidence cannot underflow.
 * @param prior cause -> probability. @param logLikelihood log P(evidence | cause), natural, by the same positions.
 * @throws EvidenceError `evidence-impossible` when no possible cause can produce the evidence. */
export function posteriorOf(
  prior: Float64Array,
  logLikelihood: Float64Array,
): { readonly posterior: Float64Array; readonly logProbabilityOfEvidence: number } {
  const logJoint = prior.map((p, at) => Math.log(p) + logLikelihood[at]!);
  const largest = logJoint.reduce((a, b) => Math.max(a, b), -Infinity);
  if (largest === -Infinity) throw new EvidenceError([problemFor('evidence-impossible', '/observations', {})]);
  const weights = logJoint.map((x) => Math.exp(x - largest));
  const sum = weights.reduce((a, b) => a + b, 0);
  return { posterior: weights.map((w) => w / sum), logProbabilityOfEvidence: largest + Math.log(sum) };
}
