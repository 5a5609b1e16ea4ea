import type { Propagation } from './propagation.ts';

/** Takes up the findings that changed since it was last done: marks what they touch as out of date. A finding that was changed and changed
 * back touches nothing. Allocates nothing. */
export function takeFindings(propagation: Propagation): void {
  const { compiled, states, soft, taken, findingsBelow, collectedFrom, stale, seenIn, now } = propagation;
  const { cliqueStart, cliquesOf, home, parent } = compiled.tree;
  for (let v = 0; v < states.length; v += 1) {
    const before = taken[v]!;
    const state = soft[v] === 1 ? -2 : states[v]!;
    if (state === before) continue;
    taken[v] = state;
    now.round += 1;
    // other variables are observed than before
    if (state < 0 || before < 0) now.pattern += 1;
    for (let k = cliqueStart[v]!, end = cliqueStart[v + 1]!; k < end; k += 1) {
      const c = cliquesOf[k]!;
      stale[c] = 3;
      seenIn[c] = now.round;
    }
    const change = (state === -1 ? 0 : 1) - (before === -1 ? 0 : 1);
    now.findings += change;
    for (let c = home[v]!; c >= 0; c = parent[c]!) {
      stale[c] = 3;
      findingsBelow[c]! += change;
      collectedFrom[c] = 0;
    }
  }
}
