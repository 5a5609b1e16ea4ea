import type { CompiledNetwork } from '../propagation/compileNetwork.ts';
import { eliminateInLogs } from '../factors/eliminateInLogs.ts';
import type { Finding } from '../network/evidence.ts';
import type { Factor } from '../factors/factor.ts';
import { impossibleEvidence } from '../errors/impossibleEvidenceError.ts';

/** P(asked | findings) and log P(findings) by elimination, in logarithms: no evidence is too faint.
 * @param factors families and findings. @throws ImpossibleEvidenceError */
export function eliminateTo(
  factors: readonly Factor[],
  findings: readonly Finding[],
  asked: readonly number[],
  cardinalities: Int32Array,
): { values: Float64Array; logProbability: number } {
  const values = eliminateInLogs(factors, asked, cardinalities);
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

/** All families, and every finding as a factor. */
export function allFactors(compiled: CompiledNetwork, findings: readonly Finding[]): Factor[] {
  return [...compiled.families, ...findings.map((finding) => factorOfFinding(finding, compiled.cardinalities))];
}

/** A finding as a factor: its likelihood, or one for the state seen and zero for the others. */
export function factorOfFinding({ variable, state, weights }: Finding, cardinalities: Int32Array): Factor {
  return {
    variables: [variable],
    values: weights ?? Float64Array.from({ length: cardinalities[variable]! }, (_, s) => Number(s === state)),
  };
}
