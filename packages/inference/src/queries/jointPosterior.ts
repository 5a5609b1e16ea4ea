import type { CompiledNetwork } from '../propagation/compileNetwork.ts';
import { eliminateTo } from './eliminateTo.ts';
import { readEvidence, type Evidence } from '../network/evidence.ts';
import { relevantFactors } from './relevantFactors.ts';
import { variablePositions } from '../network/variablePositions.ts';

/** A joint distribution given evidence. */
export interface JointPosterior {
  /** In the order asked. */
  readonly variables: readonly string[];
  /** Number of states of each. */
  readonly shape: readonly number[];
  /** P(variables | evidence), length = product of `shape`, last variable fastest, sums to one. Owned by the caller. */
  readonly probabilities: Float64Array;
  /** Natural logarithm of P(evidence); likelihoods count as given, at their scale. */
  readonly logProbabilityOfEvidence: number;
}

/** Joint posterior of any set of variables; of no variable, just P(evidence). Works on the part of the network that matters for them.
 * @throws QueryError, EvidenceInputError, ImpossibleEvidenceError.
 * @example [...jointPosterior(compileNetwork(network), {}, ['rain', 'wet']).probabilities] // [0.18, 0.02, 0.08, 0.72] */
export function jointPosterior(
  compiled: CompiledNetwork,
  evidence: Evidence,
  names: readonly string[],
): JointPosterior {
  const asked = variablePositions(compiled.network, names);
  const findings = readEvidence(compiled.network, evidence);
  const { values, logProbability } = eliminateTo(
    relevantFactors(compiled, findings, asked),
    findings,
    asked,
    compiled.cardinalities,
  );
  return {
    variables: [...names],
    shape: asked.map((at) => compiled.cardinalities[at]!),
    probabilities: values,
    logProbabilityOfEvidence: logProbability,
  };
}
