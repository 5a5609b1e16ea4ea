import type { Factor } from './factor.ts';
import { nestOf } from '../loops/loopNest.ts';
import { multiplyAlong } from '../loops/multiplyAlong.ts';
import { tableSize } from '../loops/tableSize.ts';

/** Product of factors as a table over `variables` (each factor's variables among them), last variable fastest.
 * Small factors are multiplied among themselves first, so that the large table is walked few times.
 * @param cardinalities by network position. @param rescale called whenever eight factors have met: a hundred small factors in a row
 * would underflow. */
export function multiplyFactors(
  factors: readonly Factor[],
  variables: readonly number[],
  cardinalities: ArrayLike<number>,
  rescale: (product: Float64Array) => void,
): Float64Array {
  const size = tableSize(variables, cardinalities);
  const product = new Float64Array(size).fill(1);
  const pool = factors
    .map((factor) => ({ factor, met: 1 }))
    .sort((a, b) => a.factor.values.length - b.factor.values.length);
  let met = 0;
  for (let at = 0; at < pool.length; at += 1) {
    const { factor, met: own } = pool[at]!;
    const next = pool[at + 1];
    if (next !== undefined && own + next.met <= 8) {
      const scope = variables.filter(
        (variable) => factor.variables.includes(variable) || next.factor.variables.includes(variable),
      );
      if (sizeOf(scope, cardinalities) * 4 <= size) {
        const values = multiplyFactors([factor, next.factor], scope, cardinalities, () => {});
        let to = at + 2;
        while (to < pool.length && pool[to]!.factor.values.length < values.length) to += 1;
        pool.splice(to, 0, { factor: { variables: scope, values }, met: own + next.met });
        at += 1;
        continue;
      }
    }
    const nest = nestOf(variables, factor.variables, cardinalities);
    multiplyAlong(product, 0, product, 0, factor.values, 0, nest.n, nest.a, nest.b, 0, nest.count);
    met += own;
    if (met < 8) continue;
    met = 0;
    rescale(product);
  }
  return product;
}

function sizeOf(variables: readonly number[], cardinalities: ArrayLike<number>): number {
  return variables.reduce((size, variable) => size * cardinalities[variable]!, 1);
}
