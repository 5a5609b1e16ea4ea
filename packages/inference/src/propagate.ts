import { collectEvidence } from './collectEvidence.ts';
import { distributeTo, tablesOf } from './distributeEvidence.ts';
import type { Propagation } from './propagation.ts';
import { readMarginal } from './readMarginal.ts';
import { sliceNest } from './slicedLoops.ts';

/** Brings all marginals of a workspace up to date and returns log P(evidence); -Infinity, and marginals left as they were, when the
 * evidence is impossible. Allocates nothing. */
export function propagate(propagation: Propagation): number {
  const logEvidence = collectEvidence(propagation);
  if (logEvidence === -Infinity) return logEvidence;
  const { tree, cardinalities } = propagation.compiled;
  for (let c = 0; c < tree.count; c += 1) distributeTo(propagation, c);
  for (let v = 0; v < cardinalities.length; v += 1) marginalOf(propagation, v);
  return logEvidence;
}

/** Brings one variable's marginal up to date, by messages along one path only, and returns log P(evidence) as `propagate` does. */
export function propagateTo(propagation: Propagation, variable: number): number {
  const logEvidence = collectEvidence(propagation);
  if (logEvidence === -Infinity) return logEvidence;
  const { source } = propagation.compiled.loops;
  if (propagation.active[variable] === 1)
    reach(propagation, source[variable]! < 0 ? -1 - source[variable]! : source[variable]!);
  marginalOf(propagation, variable);
  return logEvidence;
}

function reach(propagation: Propagation, c: number): void {
  if (propagation.madeIn[c] === propagation.now.round) return;
  const parent = propagation.compiled.tree.parent[c]!;
  if (parent >= 0) reach(propagation, parent);
  distributeTo(propagation, c);
}

function marginalOf(propagation: Propagation, v: number): void {
  const { compiled, states, active, marginals, sliced, outdated } = propagation;
  const { tree, loops, marginAt, cardinalities, tableAt, separatorAt, summaryAt, priorMarginals } = compiled;
  const at = marginAt[v]!;
  const end = marginAt[v + 1]!;
  const state = states[v]!;
  if (state >= 0) {
    for (let k = at; k < end; k += 1) marginals[k] = 0;
    marginals[at + state] = 1;
    return;
  }
  if (active[v] === 0) {
    for (let k = at; k < end; k += 1) marginals[k] = priorMarginals[k]!;
    return;
  }
  const nest = 2 * tree.count + v;
  if (outdated[nest] === 1) {
    sliceNest(loops, sliced, nest, states, cardinalities);
    outdated[nest] = 0;
  }
  const source = loops.source[v]!;
  let table = propagation.summaries;
  let from = 0;
  if (source < -1) from = summaryAt[-1 - source]!;
  else {
    table = tablesOf(propagation, source < 0 ? propagation.beliefFrom[0]! : propagation.separatorFrom[source]!);
    from = source < 0 ? tableAt[0]! : separatorAt[source]!;
  }
  readMarginal(table, from, marginals, at, end - at, sliced, loops, nest);
}
