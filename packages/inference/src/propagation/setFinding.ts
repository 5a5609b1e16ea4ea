import { checkNumbers, type NumberRule } from '../errors/checkNumbers.ts';
import { checkPosition } from './checkPosition.ts';
import type { Propagation } from './propagation.ts';

/** Sets, changes or (state -1) retracts the hard finding on a variable, by position. Only notes it: the next propagation takes it up.
 * Allocates nothing. @throws InferenceOptionError for a variable or state there is not
 * @example
 * ```ts
 * const workspace = createPropagation(compileNetwork(network));
 * const [wet, yes] = [1, 0];
 * setFinding(workspace, wet, yes);
 * [...workspace.states]; // [-1, 0]
 * setFinding(workspace, wet, -1);
 * [...workspace.states]; // [-1, -1]
 * ``` */
export function setFinding({ compiled, states, soft }: Propagation, variable: number, state: number): void {
  // in range and whole, as a typed array has it: the numbers are named only where that fails
  const count = compiled.cardinalities[variable];
  if (count === undefined || !(state >= -1 && state < count && (state | 0) === state)) {
    checkPosition(compiled, variable);
    checkNumbers(['/state', state ?? NaN, -1, count! - 1, true]);
  }
  states[variable] = state;
  soft[variable] = 0;
}

/** Sets the likelihood finding on a variable: numbers divided by their largest, whose logarithm is `logScale`.
 * @throws InferenceOptionError for a variable there is not, weights that are not one number from 0 to 1 per state, a `logScale` that is no number
 * @example
 * ```ts
 * const workspace = createPropagation(compileNetwork(network));
 * const wet = 1;
 * setLikelihood(workspace, wet, Float64Array.of(1, 0.5), 0);
 * propagate(workspace); // true
 * [...marginalOf(workspace, 0)]; // [0.3016, 0.6984]
 * ``` */
export function setLikelihood(
  propagation: Propagation,
  variable: number,
  weights: Float64Array,
  logScale: number,
): void {
  const { soft, compiled, softLogs, states, taken } = propagation;
  if (!areWeights(weights, compiled.cardinalities[variable]) || !(logScale < Infinity)) {
    checkPosition(compiled, variable);
    const count = compiled.cardinalities[variable]!;
    checkNumbers(
      ['/weights/length', weights?.length ?? NaN, count, count],
      ...Array.from({ length: count }, (_, k): NumberRule => [`/weights/${k}`, weights?.[k] ?? NaN, 0, 1]),
      ['/logScale', logScale ?? NaN, -Infinity, Number.MAX_VALUE],
    );
  }
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

function areWeights(weights: Float64Array, count: number | undefined): boolean {
  if (count === undefined || weights?.length !== count) return false;
  for (let k = 0; k < count; k += 1) if (!(weights[k]! >= 0 && weights[k]! <= 1)) return false;
  return true;
}
