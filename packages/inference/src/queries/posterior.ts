import type { CompiledNetwork } from '../propagation/compileNetwork.ts';
import { readEvidence, type Evidence, type Finding } from '../network/evidence.ts';
import { impossibleEvidence } from '../errors/impossibleEvidenceError.ts';
import { allFactors, eliminateTo, factorOfFinding } from './eliminateTo.ts';
import { propagate } from '../propagation/propagate.ts';
import { createPropagation } from '../propagation/propagation.ts';
import { setEvidence } from '../propagation/setEvidence.ts';

/** All posterior marginals. */
export interface Posterior {
  /** Natural logarithm of P(evidence); likelihoods count as given, at their scale. */
  readonly logProbabilityOfEvidence: number;
  /** variable -> state -> P(state | evidence). */
  readonly marginals: Readonly<Record<string, Readonly<Record<string, number>>>>;
}

/** P(state | evidence) of every variable, and log P(evidence).
 * What is still valid from the question before is kept: changing one finding costs less than asking afresh.
 * @throws EvidenceInputError, ImpossibleEvidenceError
 * @example posterior(compileNetwork(network), { rain: 'yes' }).marginals.rain // { yes: 1, no: 0 } */
export function posterior(compiled: CompiledNetwork, evidence: Evidence): Posterior {
  const findings = readEvidence(compiled.network, evidence);
  const propagation = (compiled.shared.propagation ??= createPropagation(compiled));
  setEvidence(propagation, findings);
  const possible = propagate(propagation);
  const { marginals, now } = propagation;
  if (now.doubtful) return posteriorInLogs(compiled, findings);
  if (!possible) throw impossibleEvidence();
  return {
    logProbabilityOfEvidence: propagation.logEvidence[0]!,
    marginals: named(compiled, (variable, state) => marginals[compiled.marginAt[variable]! + state]!),
  };
}

function posteriorInLogs(compiled: CompiledNetwork, findings: readonly Finding[]): Posterior {
  const ask = (asked: readonly number[]): ReturnType<typeof eliminateTo> =>
    eliminateTo(allFactors(compiled, findings), findings, asked, compiled.cardinalities);
  const { logProbability } = ask([]);
  const seen = new Map(findings.map((finding) => [finding.variable, finding]));
  const all = compiled.network.variables.map(({ index }) => {
    const finding = seen.get(index);
    return finding?.weights === null ? factorOfFinding(finding, compiled.cardinalities).values : ask([index]).values;
  });
  return {
    logProbabilityOfEvidence: logProbability,
    marginals: named(compiled, (variable, state) => all[variable]![state]!),
  };
}

function named(
  compiled: CompiledNetwork,
  probability: (variable: number, state: number) => number,
): Posterior['marginals'] {
  // fromEntries makes own properties of any name, '__proto__' included
  return Object.fromEntries(
    compiled.network.variables.map(({ name, states, index }) => [
      name,
      Object.fromEntries(states.map((state, k) => [state, probability(index, k)])),
    ]),
  );
}
