import type { Propagation } from './propagation.ts';

/** Natural logarithm of P(evidence) as of the last propagation; -Infinity where the evidence is impossible.
 * @example
 * ```ts
 * const workspace = createPropagation(compileNetwork(network));
 * setFinding(workspace, 1, 0);
 * propagate(workspace);
 * Math.exp(logEvidenceOf(workspace)) // 0.26
 * ``` */
export function logEvidenceOf({ logEvidence }: Propagation): number {
  return logEvidence[0]!;
}

/** Whether findings of the last propagation contradicted each other beyond the range of doubles, so that numbers were lost and nothing of it
 * may be believed: `posterior` answers that in logarithms.
 * @example hasLostNumbers(createPropagation(compileNetwork(network))) // false */
export function hasLostNumbers({ now }: Propagation): boolean {
  return now.doubtful;
}
