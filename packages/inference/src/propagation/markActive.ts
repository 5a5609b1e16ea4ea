import type { Propagation } from './propagation.ts';

/** Marks the variables that the findings can change and that are not observed themselves. All others are independent of the evidence, so
 * that their prior stands. Allocates nothing. */
export function markActive(propagation: Propagation): void {
  const { compiled, states, soft, active, activeShared, activeHere, reached, stale, now } = propagation;
  if (now.activeIn === now.pattern) return;
  now.activeIn = now.pattern;
  const { reach, tree, loops } = compiled;
  const count = states.length;
  const words = reached.length;
  for (let w = 0; w < words; w += 1) reached[w] = 0;
  for (let v = 0; v < count; v += 1) {
    if (states[v]! < 0 && soft[v] === 0) continue;
    for (let w = 0, at = v * words; w < words; w += 1, at += 1) reached[w]! |= reach[at]!;
  }
  for (let v = 0; v < count; v += 1) {
    const isActive = states[v]! >= 0 ? 0 : (reached[v >>> 5]! >>> (v & 31)) & 1;
    if (active[v] === isActive) continue;
    active[v] = isActive;
    const change = 2 * isActive - 1;
    for (let k = tree.cliqueStart[v]!, end = tree.cliqueStart[v + 1]!; k < end; k += 1) {
      const c = tree.cliquesOf[k]!;
      stale[c]! |= 1;
      if (c !== tree.home[v]) activeShared[c]! += change;
      else if (loops.source[v]! < 0) activeHere[c]! += change;
    }
  }
}
