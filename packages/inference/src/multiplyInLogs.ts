import { addLogsAlong } from './addLogsAlong.ts';
import type { Propagation } from './propagation.ts';

/** Collects a clique's table by adding logarithms, scaled so that its largest entry is one: for messages that together leave the range
 * of doubles although their product need not. The nests of the clique and its children are up to date.
 * @returns the logarithm taken out, and whether no positive entry (or earlier message) was lost. Sets `now.doubtful` for a message
 * that had already lost one. */
export function multiplyInLogs(propagation: Propagation, c: number): { log: number; whole: boolean } {
  const { compiled, held, scalar, least, collected, ratios, sliced, soft, weights, now } = propagation;
  const { tree, loops, prior, tableAt, separatorAt, cardinalities, marginAt } = compiled;
  const { n, a, b } = sliced;
  const table = tableAt[c]!;
  const size = tree.sizes[c]!;
  for (let k = table; k < table + size; k += 1) collected[k] = Math.log(prior[k]!);
  for (let d = tree.firstChild[c]!; d < tree.firstChild[c + 1]!; d += 1) {
    if (held[d] === 0 || scalar[d] === 1) continue;
    if (least[d] === 0) now.doubtful = true;
    const nest = tree.count + d;
    const from = separatorAt[d]! - separatorAt[0]! + sliced.offsetB[nest]!;
    addLogsAlong(
      collected,
      table + sliced.offsetA[nest]!,
      ratios,
      from,
      n,
      a,
      b,
      loops.start[nest]!,
      sliced.count[nest]!,
    );
  }
  let stride = size;
  for (let k = tree.start[c]!; k < tree.start[c]! + tree.residuals[c]!; k += 1) {
    const v = tree.members[k]!;
    const states = cardinalities[v]!;
    stride /= states;
    if (soft[v] === 0) continue;
    for (let i = 0; i < size; i += 1)
      collected[table + i]! += Math.log(weights[marginAt[v]! + (Math.floor(i / stride) % states)]!);
  }
  const entries: number[] = [];
  visit(entries, table + sliced.offsetA[c]!, n, a, loops.start[c]!, sliced.count[c]!);
  let log = -Infinity;
  for (const k of entries) if (collected[k]! > log) log = collected[k]!;
  let whole = true;
  for (const k of entries) {
    const value = log === -Infinity ? 0 : Math.exp(collected[k]! - log);
    if (value === 0 && collected[k]! > -Infinity) whole = false;
    collected[k] = value;
  }
  return { log: log === -Infinity ? 0 : log, whole };
}

/** All entries of the slice. */
function visit(entries: number[], at: number, n: Int32Array, a: Int32Array, from: number, count: number): void {
  if (count === 0) entries.push(at);
  else
    for (let r = 0; r < n[from + count - 1]!; r += 1)
      visit(entries, at + r * a[from + count - 1]!, n, a, from, count - 1);
}
