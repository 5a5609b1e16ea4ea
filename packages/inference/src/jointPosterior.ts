import type { CompiledNetwork } from './compileNetwork.ts';
import { eliminateInLogs } from './eliminateInLogs.ts';
import { readEvidence, type Evidence, type Finding } from './evidence.ts';
import { impossibleEvidence } from './impossibleEvidenceError.ts';
import { relevantFactors } from './relevantFactors.ts';
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

/** Joint posterior of any set of variables; of no variable, just P(evidence). Works on the part of the network that matters for them.
 * @throws QueryError, EvidenceInputError, ImpossibleEvidenceError. */
export function jointPosterior(
  compiled: CompiledNetwork,
  evidence: Evidence,
  names: readonly string[],
): JointPosterior {
  const asked = variablePositions(compiled.network, names);
  const findings = readEvidence(compiled.network, evidence);
  const { values, logProbability } = eliminateTo(compiled, findings, asked);
  return {
    variables: [...names],
    shape: asked.map((at) => compiled.cardinalities[at]!),
    probabilities: values,
    logProbabilityOfEvidence: logProbability,
  };
}

/** P(asked | findings) and log P(findings) by elimination, in logarithms: no evidence is too faint.
 * @throws ImpossibleEvidenceError */
export function eliminateTo(
  compiled: CompiledNetwork,
  findings: readonly Finding[],
  asked: readonly number[],
): { values: Float64Array; logProbability: number } {
  const values = eliminateInLogs(relevantFactors(compiled, findings, asked), asked, compiled.cardinalities);
  let top = -Infinity;
  for (const log of values) if (log > top) top = log;
  let logProbability = top;
  for (const finding of findings) logProbability += finding.logScale;
  if (logProbability === -Infinity) throw impossibleEvidence();
  let sum = 0;
  for (let at = 0; at < values.length; at += 1) sum += values[at] = Math.exp(values[at]! - top);
  for (let at = 0; at < values.length; at += 1) values[at]! /= sum;
  return { values, logProbability: logProbability + Math.log(sum) };
}
