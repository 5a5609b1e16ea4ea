import { ancestorsOf } from './ancestorsOf.ts';
import type { CompiledNetwork } from './compileNetwork.ts';
import { eliminateVariables } from './eliminateVariables.ts';
import { readEvidence, type Evidence, type Finding } from './evidence.ts';
import type { Factor } from './factor.ts';
import { impossibleEvidence } from './impossibleEvidenceError.ts';
import { variablePositions } from './variablePositions.ts';

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

/** Joint posterior of any set of variables; of no variable, just P(evidence).
 * @throws QueryError, EvidenceInputError, ImpossibleEvidenceError. */
export function jointPosterior(
  compiled: CompiledNetwork,
  evidence: Evidence,
  names: readonly string[],
): JointPosterior {
  const asked = variablePositions(compiled.network, names);
  const { values, logProbability } = eliminateTo(compiled, readEvidence(compiled.network, evidence), asked);
  return {
    variables: [...names],
    shape: asked.map((at) => compiled.cardinalities[at]!),
    probabilities: values,
    logProbabilityOfEvidence: logProbability,
  };
}

/** P(asked | findings) and log P(findings) by bucket elimination over the relevant part of the network.
 * @throws ImpossibleEvidenceError */
export function eliminateTo(
  compiled: CompiledNetwork,
  findings: readonly Finding[],
  asked: readonly number[],
): { values: Float64Array; logProbability: number } {
  const { network, cardinalities } = compiled;
  const relevant = ancestorsOf(network, [...asked, ...findings.map((finding) => finding.variable)]);
  const factors: Factor[] = compiled.families.filter((_, at) => relevant[at] === 1);
  let logProbability = 0;
  for (const finding of findings) {
    const weights =
      finding.weights ??
      Float64Array.from({ length: cardinalities[finding.variable]! }, (_, state) => (state === finding.state ? 1 : 0));
    factors.push({ variables: [finding.variable], values: weights });
    logProbability += finding.logScale;
  }
  const { values, logScale } = eliminateVariables(factors, asked, -1, cardinalities);
  let sum = 0;
  for (const value of values) sum += value;
  logProbability += logScale[0]! + Math.log(sum);
  if (!(logProbability > -Infinity)) {
    throw impossibleEvidence();
  }
  for (let at = 0; at < values.length; at += 1) values[at]! /= sum;
  return { values, logProbability };
}
