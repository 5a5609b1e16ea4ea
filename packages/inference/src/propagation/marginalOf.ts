import { checkPosition } from './checkPosition.ts';
import type { Propagation } from './propagation.ts';

/** P(state | evidence) of one variable as of the last propagation that was possible and reached it.
 * @param variable its position in the network. @param into written and returned: hand one in where nothing may be allocated
 * @throws InferenceOptionError for a variable there is not
 * @example
 * ```ts
 * const workspace = createPropagation(compileNetwork(network));
 * const [rain, wet, yes] = [0, 1, 0];
 * setFinding(workspace, wet, yes);
 * propagate(workspace); // true
 * [...marginalOf(workspace, rain)] // [0.6923, 0.3077]
 * ``` */
export function marginalOf(propagation: Propagation, variable: number, into?: Float64Array): Float64Array {
  const { compiled, marginals } = propagation;
  checkPosition(compiled, variable);
  const at = compiled.marginAt[variable]!;
  const count = compiled.cardinalities[variable]!;
  const numbers = into ?? new Float64Array(count);
  for (let k = 0; k < count; k += 1) numbers[k] = marginals[at + k]!;
  return numbers;
}
