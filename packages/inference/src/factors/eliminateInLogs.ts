import { addLogs } from './addLogs.ts';
import type { Factor } from './factor.ts';
import { factorOrder } from './factorOrder.ts';

/** Sums every variable but `keep` out of a product of factors, all in logarithms: slower
 * than plain numbers, and right however many small ones meet.
 * @returns logarithms over `keep`, last fastest; -Infinity where the product is zero. */
export function eliminateInLogs(
  factors: readonly Factor[],
  keep: readonly number[],
  cardinalities: ArrayLike<number>,
): Float64Array {
  let pool: Factor[] = factors.map(({ variables, values }) => ({ variables, values: values.map(Math.log) }));
  for (const variable of factorOrder(factors, new Set(keep), cardinalities)) {
    const involved = pool.filter((factor) => factor.variables.includes(variable));
    pool = pool.filter((factor) => !factor.variables.includes(variable));
    const rest = [...new Set(involved.flatMap((factor) => factor.variables))].filter((other) => other !== variable);
    const product = addLogs(involved, [variable, ...rest], cardinalities);
    const size = product.length / cardinalities[variable]!;
    const summed = new Float64Array(size);
    for (let k = 0; k < size; k += 1) {
      let top = -Infinity;
      for (let at = k; at < product.length; at += size) if (product[at]! > top) top = product[at]!;
      let sum = 0;
      for (let at = k; at < product.length; at += size) sum += top === -Infinity ? 0 : Math.exp(product[at]! - top);
      summed[k] = sum === 0 ? -Infinity : top + Math.log(sum);
    }
    pool.push({ variables: rest, values: summed });
  }
  return addLogs(pool, keep, cardinalities);
}
