import type { Propagation } from './propagation.ts';
import { sliceNest } from '../tree/slicedLoops.ts';

/** Rebuilds a nest of a workspace for what is observed now, if findings changed in its clique since it was built. */
export function refreshNest(propagation: Propagation, nest: number): void {
  const { compiled, sliced, slicedIn, seenIn, states, now } = propagation;
  const { loops, cardinalities } = compiled;
  if (slicedIn[nest]! >= seenIn[loops.owner[nest]!]!) return;
  slicedIn[nest] = now.round;
  sliceNest(loops, sliced, nest, states, cardinalities);
}
