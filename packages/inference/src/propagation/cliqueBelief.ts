import type { Propagation } from './propagation.ts';

/** The tables in which clique c's belief stands, at its usual place. */
export function cliqueBelief(propagation: Propagation, c: number): Float64Array {
  const { compiled, collected, beliefs, collectedFrom, separatorFrom } = propagation;
  if (separatorFrom[c] === 2) return beliefs;
  return collectedFrom[c] === 1 ? collected : compiled.prior;
}
