import type { CompiledNetwork } from './compileNetwork.ts';
import { readEvidence, type Evidence } from './evidence.ts';
import { eliminateTo } from './jointPosterior.ts';

/** All posterior marginals. */
export interface Posterior {
  /** Natural logarithm of P(evidence); likelihoods count as given, at their scale. */
  readonly logProbabilityOfEvidence: number;
  /** variable -> state -> P(state | evidence). */
  readonly marginals: Readonly<Record<string, Readonly<Record<string, number>>>>;
}

/** P(state | evidence) of every variable, and log P(evidence).
 * @throws EvidenceInputError, ImpossibleEvidenceError
 * @example posterior(compileNetwork(network), { rain: 'yes' }).marginals.rain // { yes: 1, no: 0 } */
export function posterior(compiled: CompiledNetwork, evidence: Evidence): Posterior {
  const findings = readEvidence(compiled.network, evidence);
  const { logProbability } = eliminateTo(compiled, findings, []);
  const marginals = compiled.network.variables.map((variable) => {
    const { values } = eliminateTo(compiled, findings, [variable.index]);
    // fromEntries makes own properties of any name, '__proto__' included
    return [variable.name, Object.fromEntries(variable.states.map((state, at) => [state, values[at]!]))] as const;
  });
  return { logProbabilityOfEvidence: logProbability, marginals: Object.fromEntries(marginals) };
}
