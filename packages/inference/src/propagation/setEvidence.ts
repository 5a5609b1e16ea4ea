import type { Finding } from '../network/evidence.ts';
import type { Propagation } from './propagation.ts';
import { setFinding, setLikelihood } from './setFinding.ts';

/** Gives a workspace exactly these findings. */
export function setEvidence(propagation: Propagation, findings: readonly Finding[]): void {
  for (let v = 0; v < propagation.states.length; v += 1) setFinding(propagation, v, -1);
  for (const { variable, state, weights, logScale } of findings) {
    if (weights === null) setFinding(propagation, variable, state);
    else setLikelihood(propagation, variable, weights, logScale);
  }
}
