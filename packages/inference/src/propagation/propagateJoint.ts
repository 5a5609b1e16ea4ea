import type { Propagation } from './propagation.ts';

/** As `propagate`, for a tree that is one small joint table, and findings without likelihoods. Takes the entries that agree with the
 * findings, then sums one variable out after the other, slowest first; each leaves its marginal behind. Allocates nothing. */
export function propagateJoint(propagation: Propagation): boolean {
  const { compiled, states, matchingEntries, beliefs, marginals, stale, logEvidence, now } = propagation;
  const { cardinalities, prior, marginAt } = compiled;
  const { members } = compiled.tree;
  // what `propagateTo` and likelihoods find is about other findings
  now.round += 1;
  stale[0]! |= 1;
  let first = 0;
  let stride = 1;
  let size = 1;
  for (let k = members.length - 1; k >= 0; k -= 1) {
    const v = members[k]!;
    const count = cardinalities[v]!;
    const state = states[v]!;
    if (state >= 0) first += state * stride;
    else {
      const end = size * count;
      for (let to = size, from = 0; to < end; to += 1, from += 1) matchingEntries[to] = matchingEntries[from]! + stride;
      size = end;
    }
    stride *= count;
  }
  let total = 0;
  for (let k = 0; k < size; k += 1) total += beliefs[k] = prior[first + matchingEntries[k]!]!;
  logEvidence[0] = size === stride ? 0 : Math.log(total);
  if (total === 0) return false;
  for (let k = 0; k < members.length; k += 1) {
    const v = members[k]!;
    const state = states[v]!;
    const at = marginAt[v]!;
    const end = marginAt[v + 1]!;
    if (state >= 0) {
      for (let s = at; s < end; s += 1) marginals[s] = 0;
      marginals[at + state] = 1;
      continue;
    }
    size /= end - at;
    for (let s = at, from = 0; s < end; s += 1) {
      let sum = 0;
      for (let j = 0; j < size; j += 1, from += 1) {
        const p = beliefs[from]!;
        sum += p;
        if (from > j) beliefs[j]! += p;
      }
      marginals[s] = sum / total;
    }
  }
  return true;
}
