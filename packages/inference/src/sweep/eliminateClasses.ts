import { contractFactors, type ClassFactor } from './classFactor.ts';
import { createScratch, release } from '../loops/scratch.ts';
import { oneClass, refineClasses, type RootClasses } from './rootClasses.ts';

const scratch = createScratch();

/** Sums every variable but `keep` out of a product of factors (bucket elimination), each step for no more classes of root states than its
 * own factors tell apart.
 * @returns a factor over `keep`, in some order; its blocks are lent until the next elimination.
 * Source: Dechter 1999, Artificial Intelligence 113:41-85 (bucket elimination). */
export function eliminateClasses(
  factors: readonly ClassFactor[],
  keep: readonly number[],
  roots: number,
  cardinalities: ArrayLike<number>,
): ClassFactor {
  release(scratch);
  const one: ClassFactor = { variables: [], blocks: Float64Array.of(1), size: 1, logs: null, ...oneClass(roots) };
  let pool = [...factors];
  const left = new Set(factors.flatMap((factor) => factor.variables).filter((variable) => !keep.includes(variable)));
  while (left.size > 0) {
    const variable = cheapest(pool, left, roots, cardinalities);
    left.delete(variable);
    const involved = pool.filter((factor) => factor.variables.includes(variable));
    pool = pool.filter((factor) => !factor.variables.includes(variable));
    const last = multiplied(involved.slice().sort(bySize), cardinalities);
    pool.push(contractFactors(last.rest ?? one, last.largest, variable, cardinalities, scratch));
  }
  const { rest, largest } = multiplied([one, ...pool].sort(bySize), cardinalities);
  return rest === null ? largest : contractFactors(rest, largest, -1, cardinalities, scratch);
}

/** The variable whose elimination walks the smallest table, and leaves little: root classes count as much as configurations. */
function cheapest(
  pool: readonly ClassFactor[],
  left: ReadonlySet<number>,
  roots: number,
  cardinalities: ArrayLike<number>,
): number {
  let best = -1;
  let least = Infinity;
  for (const variable of left) {
    let classes: RootClasses = oneClass(roots);
    const walked = new Set<number>();
    for (const factor of pool) {
      if (!factor.variables.includes(variable)) continue;
      classes = refineClasses(classes, factor);
      for (const other of factor.variables) walked.add(other);
    }
    let cost = classes.firstOf.length * (1 + 2 / cardinalities[variable]!);
    for (const other of walked) cost *= cardinalities[other]!;
    if (best < 0 || cost < least) [best, least] = [variable, cost];
  }
  return best;
}

/** All but the largest factor multiplied, the smallest first, so that the largest is walked once. */
function multiplied(
  sorted: readonly ClassFactor[],
  cardinalities: ArrayLike<number>,
): { rest: ClassFactor | null; largest: ClassFactor } {
  let rest: ClassFactor | null = null;
  for (const factor of sorted.slice(0, -1))
    rest = rest === null ? factor : contractFactors(rest, factor, -1, cardinalities, scratch);
  return { rest, largest: sorted[sorted.length - 1]! };
}

function bySize(a: ClassFactor, b: ClassFactor): number {
  return a.size * a.firstOf.length - b.size * b.firstOf.length;
}
