import { checkPosition } from './checkPosition.ts';
import { collectEvidence } from './collectEvidence.ts';
import { distributeEvidence } from './distributeEvidence.ts';
import { propagateJoint } from './propagateJoint.ts';
import type { Propagation } from './propagation.ts';
import { readMarginals } from './readMarginals.ts';

/** Brings a workspace up to date for `marginalOf` and `logEvidenceOf`. Returns whether the evidence is possible; if not, the marginals are left as
 * they were. Look at `hasLostNumbers` where findings may contradict each other beyond the range of doubles. Allocates nothing.
 * @example
 * ```ts
 * const workspace = createPropagation(compileNetwork(network));
 * const [wet, yes] = [1, 0];
 * setFinding(workspace, wet, yes);
 * propagate(workspace); // true
 * [...marginalOf(workspace, wet)]; // [1, 0]
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

/** Brings one variable's marginal, by messages along one path only, and log P(evidence) up to date; returns as `propagate` does.
 * @throws InferenceOptionError for a variable there is not
 * @example
 * ```ts
 * const workspace = createPropagation(compileNetwork(network));
 * const [rain, wet, yes] = [0, 1, 0];
 * setFinding(workspace, wet, yes);
 * propagateTo(workspace, rain); // true
 * [...marginalOf(workspace, rain)]; // [0.6923, 0.3077]
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
