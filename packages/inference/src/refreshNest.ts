import type { Propagation } from './propagation.ts';
import { sliceNest } from './slicedLoops.ts';

/** Rebuilds a nest of a workspace for what is observed now, if its observed variables changed since it was built. */
export function refreshNest({ compiled, sliced, outdated, states }: Propagation, nest: number): void {
  if (outdated[nest] === 1) sliceNest(compiled.loops, sliced, outdated, nest, states, compiled.cardinalities);
}
