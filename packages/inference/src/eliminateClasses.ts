import { contractFactors, type ClassFactor } from './classFactor.ts';
import { factorOrder } from './factorOrder.ts';
import { oneClass } from './rootClasses.ts';

/** Sums every variable but `keep` out of a product of factors (bucket elimination), each step for no more classes of root states than its
 * own factors tell apart.
 * @returns a factor over `keep`, in some order.
 * Source: Dechter 1999, Artificial Intelligence 113:41-85 (bucket elimination). */
export function eliminateClasses(
  factors: readonly ClassFactor[],
  keep: readonly number[],
  roots: number,
  cardinalities: ArrayLike<number>,
): ClassFactor {
  const one: ClassFactor = { variables: [], blocks: Float64Array.of(1), size: 1, logs: null, ...oneClass(roots) };
  let pool = [...factors];
  for (const variable of factorOrder(factors, new Set(keep), cardinalities)) {
    const involved = pool.filter((factor) => factor.variables.includes(variable));
    pool = pool.filter((factor) => !factor.variables.includes(variable));
    const last = multiplied(involved.slice().sort(bySize), cardinalities);
    pool.push(contractFactors(last.rest ?? one, last.largest, variable, cardinalities));
  }
  const { rest, largest } = multiplied([one, ...pool].sort(bySize), cardinalities);
  return rest === null ? largest : contractFactors(rest, largest, -1, cardinalities);
}

/** All but the largest factor multiplied, the smallest first, so that the largest is walked once. */
function multiplied(
  sorted: readonly ClassFactor[],
  cardinalities: ArrayLike<number>,
): { rest: ClassFactor | null; largest: ClassFactor } {
  let rest: ClassFactor | null = null;
  for (const factor of sorted.slice(0, -1))
    rest = rest === null ? factor : contractFactors(rest, factor, -1, cardinalities);
  return { rest, largest: sorted[sorted.length - 1]! };
}

function bySize(a: ClassFactor, b: ClassFactor): number {
  return a.size * a.firstOf.length - b.size * b.firstOf.length;
}
