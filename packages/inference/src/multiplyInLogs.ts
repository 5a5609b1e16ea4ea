import { addAlong } from './addAlong.ts';
import type { Propagation } from './propagation.ts';

/** Collects a clique's table by adding logarithms, scaled so that its largest entry is one: for messages that together leave the range
 * of doubles although their product need not. The nests of the clique and its children are up to date.
 * @returns the logarithm taken out, and whether no positive entry (or earlier message) was lost. Sets `now.doubtful` for a message
 * that had already lost one. */
export function multiplyInLogs(propagation: Propagation, c: number): { log: number; whole: boolean } {
  const { compiled, held, scalar, least, collected, ratios, sliced, states, soft, weights, now } = propagation;
  const { tree, loops, prior, tableAt, separatorAt, cardinalities, marginAt } = compiled;
  const { n, a, b } = sliced;
  const table = tableAt[c]!;
  const size = tree.sizes[c]!;
  for (let k = table; k < table + size; k += 1) collected[k] = Math.log(prior[k]!);
  for (let d = tree.firstChild[c]!; d < tree.firstChild[c + 1]!; d += 1) {
    if (held[d] === 0 || scalar[d] === 1) continue;
    if (least[d] === 0) now.doubtful = true;
    const nest = tree.count + d;
    const shift = separatorAt[0]!;
    const message = ratios.subarray(separatorAt[d]! - shift, separatorAt[d + 1]! - shift).map(Math.log);
    const to = table + sliced.offsetA[nest]!;
    addAlong(message, sliced.offsetB[nest]!, collected, to, n, b, a, loops.start[nest]!, sliced.count[nest]!);
  }
  // what is outside the slice counts as zero
  let stride = size;
  for (let k = tree.start[c]!; k < tree.start[c + 1]!; k += 1) {
    const v = tree.members[k]!;
    const count = cardinalities[v]!;
    stride /= count;
    const seen = states[v]!;
    const weighs = soft[v] === 1 && tree.home[v] === c;
    if (seen < 0 && !weighs) continue;
    for (let i = 0; i < size; i += 1) {
      const state = Math.floor(i / stride) % count;
      if (weighs) collected[table + i]! += Math.log(weights[marginAt[v]! + state]!);
      else if (state !== seen) collected[table + i] = -Infinity;
    }
  }
  let log = -Infinity;
  for (let k = table; k < table + size; k += 1) if (collected[k]! > log) log = collected[k]!;
  let whole = true;
  for (let k = table; k < table + size; k += 1) {
    const value = log === -Infinity ? 0 : Math.exp(collected[k]! - log);
    if (value === 0 && collected[k]! > -Infinity) whole = false;
    collected[k] = value;
  }
  return { log: log === -Infinity ? 0 : log, whole };
}
