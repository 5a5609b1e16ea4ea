import { addAlong } from './addAlong.ts';
import type { SlicedLoops } from './slicedLoops.ts';
import type { TreeLoops } from './treeLoops.ts';

/** Sums a table down to one variable and makes it sum to one. Returns the sum before. Allocates nothing.
 * @param t where the table begins. @param m where the marginal begins. @param nest the variable's nest. */
export function readMarginal(
  table: Float64Array,
  t: number,
  marginals: Float64Array,
  m: number,
  states: number,
  sliced: SlicedLoops,
  loops: TreeLoops,
  nest: number,
): number {
  const end = m + states;
  for (let k = m; k < end; k += 1) marginals[k] = 0;
  addAlong(
    table,
    t + sliced.offsetA[nest]!,
    marginals,
    m,
    sliced.n,
    sliced.a,
    sliced.b,
    loops.start[nest]!,
    sliced.count[nest]!,
  );
  let sum = 0;
  for (let k = m; k < end; k += 1) sum += marginals[k]!;
  if (sum > 0) for (let k = m; k < end; k += 1) marginals[k]! /= sum;
  return sum;
}
