import type { Propagation } from './propagation.ts';

/** Sets, changes or (state -1) retracts the hard finding on a variable, by position. Only notes it: the next propagation takes it up.
 * Allocates nothing. The caller has checked the ranges. */
export function setFinding({ states, soft }: Propagation, variable: number, state: number): void {
  states[variable] = state;
  soft[variable] = 0;
}

/** Sets the likelihood finding on a variable: numbers divided by their largest, whose logarithm is `logScale`. */
export function setLikelihood(
  propagation: Propagation,
  variable: number,
  weights: Float64Array,
  logScale: number,
): void {
  const { soft, compiled, softLogs, states, taken } = propagation;
  const at = compiled.marginAt[variable]!;
  let changed = softLogs[variable] !== logScale;
  for (let k = 0; k < weights.length; k += 1) {
    if (propagation.weights[at + k] !== weights[k]) changed = true;
    propagation.weights[at + k] = weights[k]!;
  }
  if (changed && taken[variable] === -2) taken[variable] = -3;
  softLogs[variable] = logScale;
  states[variable] = -1;
  soft[variable] = 1;
}
