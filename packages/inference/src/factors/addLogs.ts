import { addAlong } from '../loops/addAlong.ts';
import type { Factor } from './factor.ts';
import { nestOf } from '../loops/loopNest.ts';
import { tableSize } from '../loops/tableSize.ts';

/** The product of factors given in logarithms, over variables that include all of theirs.
 * @returns logarithms over `variables`, last fastest. */
export function addLogs(
  factors: readonly Factor[],
  variables: readonly number[],
  cardinalities: ArrayLike<number>,
): Float64Array {
  const sum = new Float64Array(tableSize(variables, cardinalities));
  for (const factor of factors) {
    const nest = nestOf(variables, factor.variables, cardinalities);
    addAlong(factor.values, 0, sum, 0, nest.n, nest.b, nest.a, 0, nest.count);
  }
  return sum;
}
