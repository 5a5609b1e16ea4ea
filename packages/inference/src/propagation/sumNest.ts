import { addAlong } from '../loops/addAlong.ts';
import type { Propagation } from './propagation.ts';
import { refreshNest } from './refreshNest.ts';

/** dst[d ... end - 1] = sums of `src` along a nest of the tree's loops (see `TreeLoops`), observed variables at their states.
 * @param s where the nest's first table begins in `src`. Allocates nothing. */
export function sumNest(
  propagation: Propagation,
  nest: number,
  src: Float64Array,
  s: number,
  dst: Float64Array,
  d: number,
  end: number,
): void {
  refreshNest(propagation, nest);
  const { n, a, b, offsetA, offsetB, count } = propagation.sliced;
  for (let k = d; k < end; k += 1) dst[k] = 0;
  const from = propagation.compiled.loops.start[nest]!;
  addAlong(src, s + offsetA[nest]!, dst, d + offsetB[nest]!, n, a, b, from, count[nest]!);
}
