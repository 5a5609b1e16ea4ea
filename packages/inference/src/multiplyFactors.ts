import type { Factor } from './factor.ts';

/** Product of factors as a table over `variables` (each factor's variables among them), last variable fastest.
 * @param cardinalities by network position. @param rescale called after every eighth factor: a hundred small factors in a row
 * would underflow. Complexity: table size times number of factors. */
export function multiplyFactors(
  factors: readonly Factor[],
  variables: readonly number[],
  cardinalities: ArrayLike<number>,
  rescale: (product: Float64Array) => void,
): Float64Array {
  const shape = variables.map((variable) => cardinalities[variable]!);
  const product = new Float64Array(shape.reduce((size, n) => size * n, 1)).fill(1);
  factors.forEach((factor, k) => {
    multiplyInto(product, shape, factor.values, stridesOf(factor, variables, cardinalities));
    if (k % 8 === 7) rescale(product);
  });
  return product;
}

/** Step in `factor.values` for one step of each of `variables`; 0 for variables the factor does not have. */
export function stridesOf(factor: Factor, variables: readonly number[], cardinalities: ArrayLike<number>): number[] {
  const strides = variables.map(() => 0);
  let stride = 1;
  for (let k = factor.variables.length - 1; k >= 0; k -= 1) {
    const variable = factor.variables[k]!;
    strides[variables.indexOf(variable)] = stride;
    stride *= cardinalities[variable]!;
  }
  return strides;
}

function multiplyInto(
  product: Float64Array,
  shape: readonly number[],
  values: Float64Array,
  strides: readonly number[],
): void {
  const last = shape.length - 1;
  if (last < 0) {
    product[0]! *= values[0]!;
    return;
  }
  const inner = shape[last]!;
  const step = strides[last]!;
  const digits = new Int32Array(shape.length);
  let from = 0;
  for (let base = 0; base < product.length; base += inner) {
    for (let k = 0, at = from; k < inner; k += 1, at += step) product[base + k]! *= values[at]!;
    for (let d = last - 1; d >= 0; d -= 1) {
      digits[d]! += 1;
      from += strides[d]!;
      if (digits[d]! < shape[d]!) break;
      from -= strides[d]! * shape[d]!;
      digits[d] = 0;
    }
  }
}
