import { addAlong } from './addAlong.ts';
import { markActive } from './markActive.ts';
import { multiplyAlong } from './multiplyAlong.ts';
import type { Propagation } from './propagation.ts';
import { sliceNest } from './slicedLoops.ts';

/** Messages smaller than this are scaled up and the logarithm kept. */
const faint = 1e-30;

/** Sends messages towards the root, only from where findings changed, and returns log P(evidence); -Infinity when impossible.
 * Allocates nothing. */
export function collectEvidence(propagation: Propagation): number {
  const { compiled, held, stale, now } = propagation;
  if (now.collectedIn === now.round) return now.logEvidence;
  markActive(propagation);
  for (let c = compiled.tree.count - 1; c >= 0; c -= 1) {
    if (stale[c] === 0 || held[c] === 0) continue;
    collectClique(propagation, c);
    stale[c] = 0;
  }
  now.collectedIn = now.round;
  now.logEvidence = now.findings === 0 ? 0 : propagation.logs[0]!;
  return now.logEvidence;
}

function collectClique(propagation: Propagation, c: number): void {
  const { compiled, held, collected, ratios, logs, scalar, sliced, outdated, soft, states } = propagation;
  const { tree, loops, prior, tableAt, separatorAt, cardinalities, marginAt } = compiled;
  const { n, a, b } = sliced;
  const { count } = tree;
  const table = tableAt[c]!;
  const zero = separatorAt[0]!;
  let source = prior;
  let log = 0;
  let since = 0;
  for (let d = tree.firstChild[c]!, end = tree.firstChild[c + 1]!; d < end; d += 1) {
    if (held[d] === 0) continue;
    log += logs[d]!;
    if (scalar[d] === 1) continue;
    const nest = count + d;
    if (outdated[nest] === 1) {
      sliceNest(loops, sliced, nest, states, cardinalities);
      outdated[nest] = 0;
    }
    const at = table + sliced.offsetA[nest]!;
    multiplyAlong(
      collected,
      at,
      source,
      at,
      ratios,
      separatorAt[d]! - zero + sliced.offsetB[nest]!,
      n,
      a,
      b,
      loops.start[nest]!,
      sliced.count[nest]!,
    );
    source = collected;
    since += 1;
    // many small messages in a row would underflow
    if (since % 8 === 0) log += rescale(collected, table, table + tree.sizes[c]!);
  }
  let stride = tree.sizes[c]!;
  for (let k = tree.start[c]!, end = k + tree.residuals[c]!; k < end; k += 1) {
    const v = tree.members[k]!;
    stride /= cardinalities[v]!;
    if (soft[v] === 0) continue;
    multiplyByLikelihood(
      collected,
      source,
      table,
      tree.sizes[c]!,
      stride,
      propagation.weights,
      marginAt[v]!,
      cardinalities[v]!,
    );
    log += propagation.softLogs[v]!;
    source = collected;
  }
  propagation.collectedFrom[c] = source === prior ? 0 : 1;
  if (outdated[c] === 1) {
    sliceNest(loops, sliced, c, states, cardinalities);
    outdated[c] = 0;
  }
  const separator = separatorAt[c]!;
  const separatorEnd = separatorAt[c + 1]!;
  for (let k = separator; k < separatorEnd; k += 1) collected[k] = 0;
  addAlong(
    source,
    table + sliced.offsetA[c]!,
    collected,
    separator + sliced.offsetB[c]!,
    n,
    a,
    b,
    loops.start[c]!,
    sliced.count[c]!,
  );
  logs[c] = log + (c === 0 ? Math.log(collected[separator]!) : messageUpwards(propagation, c));
}

/** Turns the sum over a clique into the message's ratio to the prior; returns the logarithm taken out. */
function messageUpwards(propagation: Propagation, c: number): number {
  const { compiled, collected, ratios, scalar, active } = propagation;
  const { tree, prior, separatorAt } = compiled;
  const separator = separatorAt[c]!;
  const end = separatorAt[c + 1]!;
  const shift = separatorAt[0]!;
  let live = false;
  for (let k = tree.start[c]! + tree.residuals[c]!; k < tree.start[c + 1]!; k += 1)
    if (active[tree.members[k]!] === 1) live = true;
  scalar[c] = live ? 0 : 1;
  if (!live) {
    // nothing in the separator depends on the evidence: the ratio is the same everywhere
    let sum = 0;
    let before = 0;
    for (let k = separator; k < end; k += 1) {
      sum += collected[k]!;
      if (collected[k]! > 0) before += prior[k]!;
    }
    return sum === 0 ? -Infinity : Math.log(sum / before);
  }
  let largest = 0;
  for (let k = separator; k < end; k += 1) {
    const sum = collected[k]!;
    const ratio = sum === 0 ? 0 : sum / prior[k]!;
    ratios[k - shift] = ratio;
    if (ratio > largest) largest = ratio;
  }
  if (largest >= faint) return 0;
  if (largest === 0) return -Infinity;
  for (let k = separator - shift; k < end - shift; k += 1) ratios[k]! /= largest;
  return Math.log(largest);
}

function rescale(table: Float64Array, from: number, end: number): number {
  let largest = 0;
  for (let k = from; k < end; k += 1) if (table[k]! > largest) largest = table[k]!;
  if (largest === 0 || largest > faint) return 0;
  for (let k = from; k < end; k += 1) table[k]! /= largest;
  return Math.log(largest);
}

function multiplyByLikelihood(
  table: Float64Array,
  source: Float64Array,
  at: number,
  size: number,
  stride: number,
  weights: Float64Array,
  w: number,
  states: number,
): void {
  for (let k = 0; k < size;) {
    for (let s = 0; s < states; s += 1) {
      const weight = weights[w + s]!;
      for (let end = k + stride; k < end; k += 1) table[at + k] = source[at + k]! * weight;
    }
  }
}
