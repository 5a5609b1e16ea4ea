import type { Propagation } from './propagation.ts';

/** Sets, changes or (state -1) retracts the hard finding on a variable, by position. Marks only what it touches as out of date.
 * Allocates nothing. The caller has checked the ranges. */
export function setFinding(propagation: Propagation, variable: number, state: number): void {
  const { states, soft } = propagation;
  if (states[variable] === state && soft[variable] === 0) return;
  if (states[variable]! < 0 || state < 0) propagation.now.pattern += 1;
  touch(propagation, variable, state, 0);
}

/** Sets the likelihood finding on a variable: numbers divided by their largest, whose logarithm is `logScale`. */
export function setLikelihood(
  propagation: Propagation,
  variable: number,
  weights: Float64Array,
  logScale: number,
): void {
  const { soft, compiled, softLogs } = propagation;
  const at = compiled.marginAt[variable]!;
  if (soft[variable] === 1 && softLogs[variable] === logScale) {
    let same = true;
    for (let k = 0; k < weights.length; k += 1) if (propagation.weights[at + k] !== weights[k]) same = false;
    if (same) return;
  }
  if (soft[variable] === 0) propagation.now.pattern += 1;
  softLogs[variable] = logScale;
  propagation.weights.set(weights, at);
  touch(propagation, variable, -1, 1);
}

function touch(propagation: Propagation, variable: number, state: number, isSoft: number): void {
  const { compiled, states, soft, held, stale, outdated, now } = propagation;
  const change = (state < 0 ? isSoft : 1) - (states[variable]! < 0 ? soft[variable]! : 1);
  states[variable] = state;
  soft[variable] = isSoft;
  const { tree, loops } = compiled;
  for (let k = loops.nestStart[variable]!, end = loops.nestStart[variable + 1]!; k < end; k += 1)
    outdated[loops.nestsOf[k]!] = 1;
  for (let k = tree.cliqueStart[variable]!, end = tree.cliqueStart[variable + 1]!; k < end; k += 1)
    stale[tree.cliquesOf[k]!] = 1;
  for (let c = tree.home[variable]!; c >= 0; c = tree.parent[c]!) {
    stale[c] = 1;
    held[c]! += change;
  }
  now.findings += change;
  now.round += 1;
}
