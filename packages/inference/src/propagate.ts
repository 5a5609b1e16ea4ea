import { collectEvidence } from './collectEvidence.ts';
import { distributeEvidence } from './distributeEvidence.ts';
import type { Propagation } from './propagation.ts';
import { readMarginals } from './readMarginals.ts';

/** Brings `marginals` and `logEvidence[0]` of a workspace up to date. Returns whether the evidence is possible; if not, `logEvidence[0]` is
 * -Infinity and the marginals are left as they were. Allocates nothing. */
export function propagate(propagation: Propagation): boolean {
  collectEvidence(propagation);
  if (propagation.logEvidence[0] === -Infinity) return false;
  const { tree, cliques, cardinalities } = propagation.compiled;
  distributeEvidence(propagation, cliques, tree.count);
  readMarginals(propagation, 0, cardinalities.length);
  return true;
}

/** Brings one variable's marginal, by messages along one path only, and `logEvidence[0]` up to date; returns as `propagate` does. */
export function propagateTo(propagation: Propagation, variable: number): boolean {
  collectEvidence(propagation);
  if (propagation.logEvidence[0] === -Infinity) return false;
  const { compiled, active, madeIn, now, path } = propagation;
  if (active[variable] === 1) {
    const source = compiled.loops.source[variable]!;
    let count = 0;
    for (let c = source < 0 ? -1 - source : source; c >= 0 && madeIn[c] !== now.round; c = compiled.tree.parent[c]!) {
      path[path.length - 1 - count] = c;
      count += 1;
    }
    path.copyWithin(0, path.length - count);
    distributeEvidence(propagation, path, count);
  }
  readMarginals(propagation, variable, variable + 1);
  return true;
}
