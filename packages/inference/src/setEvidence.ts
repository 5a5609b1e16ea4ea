import type { Finding } from './evidence.ts';
import type { Propagation } from './propagation.ts';
import { setFinding, setLikelihood } from './setFinding.ts';

/** Gives a workspace exactly these findings: retracts others, sets what differs, leaves what is the same. */
export function setEvidence(propagation: Propagation, findings: readonly Finding[]): void {
  const kept = new Uint8Array(propagation.states.length);
  for (const { variable } of findings) kept[variable] = 1;
  for (let v = 0; v < kept.length; v += 1) if (kept[v] === 0) setFinding(propagation, v, -1);
  for (const { variable, state, weights, logScale } of findings) {
    if (weights === null) setFinding(propagation, variable, state);
    else setLikelihood(propagation, variable, weights, logScale);
  }
}
