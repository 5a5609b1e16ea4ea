import type { Factor } from './factor.ts';
import { nestOf } from './loopNest.ts';
import { multiplyAlong } from './multiplyAlong.ts';

/** Product of factors as a table over `variables` (each factor's variables among them), last variable fastest.
 * @param cardinalities by network position. @param rescale called after every eighth factor: a hundred small factors in a row
 * would underflow. Complexity: table size times number of factors. */
export function multiplyFactors(
  factors: readonly Factor[],
  variables: readonly number[],
  cardinalities: ArrayLike<number>,
  rescale: (product: Float64Array) => void,
): Float64Array {
  const product = new Float64Array(variables.reduce((size, variable) => size * cardinalities[variable]!, 1)).fill(1);
  factors.forEach((factor, k) => {
    const nest = nestOf(variables, factor.variables, cardinalities);
    multiplyAlong(product, 0, product, 0, factor.values, 0, nest.n, nest.a, nest.b, 0, nest.count);
    if (k % 8 === 7) rescale(product);
  });
  return product;
}
