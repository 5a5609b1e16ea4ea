import { checkPosition } from './checkPosition.ts';
import { collectEvidence } from './collectEvidence.ts';
import { distributeEvidence } from './distributeEvidence.ts';
import { propagateJoint } from './propagateJoint.ts';
import type { Propagation } from './propagation.ts';
import { readMarginals } from './readMarginals.ts';

/** Brings `marginals` and `logEvidence[0]` of a workspace up to date. Returns whether the evidence is possible; if not, `logEvidence[0]` is
 * -Infinity and the marginals are left as they were. Where `now.doubtful` is set, findings contradicted each other beyond the range of
 * doubles and nothing of this may be believed: `posterior` answers that in logarithms. Allocates nothing.
 * @example
 * ```ts
 * const workspace = createPropagation(compileNetwork(network));
 * const [wet, yes] = [1, 0];
 * setFinding(workspace, wet, yes);
 * propagate(workspace); // true
 * [...workspace.marginals]; // [0.6923, 0.3077, 1, 0]
 * ``` */
export function propagate(propagation: Propagation): boolean {
  if (propagation.compiled.isJoint && !propagation.soft.includes(1)) return propagateJoint(propagation);
  collectEvidence(propagation);
  if (propagation.logEvidence[0] === -Infinity) return false;
  const { tree, cardinalities } = propagation.compiled;
  distributeEvidence(propagation, 0, tree.count);
  readMarginals(propagation, 0, cardinalities.length);
  return true;
}

/** Brings one variable's marginal, by messages along one path only, and `logEvidence[0]` up to date; returns as `propagate` does.
 * @throws InferenceOptionError for a variable there is not
 * @example
 * ```ts
 * const workspace = createPropagation(compileNetwork(network));
 * const [rain, wet, yes] = [0, 1, 0];
 * setFinding(workspace, wet, yes);
 * propagateTo(workspace, rain); // true
 * [...workspace.marginals.subarray(0, 2)]; // [0.6923, 0.3077]
 * ``` */
export function propagateTo(propagation: Propagation, variable: number): boolean {
  checkPosition(propagation.compiled, variable);
  collectEvidence(propagation);
  if (propagation.logEvidence[0] === -Infinity) return false;
  const { compiled, active, madeIn, now } = propagation;
  const { parent } = compiled.tree;
  const source = compiled.loops.source[variable]!;
  const last = source < 0 ? ~source : source;
  while (active[variable] === 1 && madeIn[last] !== now.round) {
    let c = last;
    while (c > 0 && madeIn[parent[c]!] !== now.round) c = parent[c]!;
    distributeEvidence(propagation, c, c + 1);
  }
  readMarginals(propagation, variable, variable + 1);
  return true;
}
