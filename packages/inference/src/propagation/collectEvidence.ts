import { markActive } from './markActive.ts';
import { multiplyAlong } from '../loops/multiplyAlong.ts';
import { multiplyInLogs } from './multiplyInLogs.ts';
import type { Propagation } from './propagation.ts';
import { refreshNest } from './refreshNest.ts';
import { sumNest } from './sumNest.ts';
import { takeFindings } from './takeFindings.ts';

/** Messages whose largest number is smaller than this are scaled up and the logarithm kept. */
const faint = 1e-30;

/** When the smallest numbers that meet in a clique multiply to less than this, they are added in logarithms instead; the distance to
 * the smallest double, 5e-324, is left to the clique's own table. */
const tiny = 1e-250;

/** Sends messages towards the root, only from where findings changed, and sets `logEvidence[0]`; -Infinity when impossible.
 * Sets `now.doubtful` when a positive number was lost to underflow below some message: then ask `eliminateTo` instead.
 * Allocates nothing, except where findings contradict each other beyond the range of doubles. */
export function collectEvidence(propagation: Propagation): void {
  const { compiled, findingsBelow, stale, now, logs } = propagation;
  takeFindings(propagation);
  if (now.collectedIn === now.round) return;
  markActive(propagation);
  now.summed = -1;
  if (now.doubtful) {
    stale.fill(3);
    now.doubtful = false;
  }
  for (let c = compiled.tree.count - 1; c >= 0; c -= 1) {
    if (stale[c]! < 2 || findingsBelow[c] === 0) continue;
    collectClique(propagation, c);
    stale[c] = 1;
  }
  now.collectedIn = now.round;
  propagation.logEvidence[0] = now.findings === 0 ? 0 : logs[0]!;
}

function collectClique(propagation: Propagation, c: number): void {
  const { compiled, findingsBelow, collected, ratios, logs, scalar, least, sliced, soft, softLogs, weights } =
    propagation;
  const { tree, loops, prior, tableAt, separatorAt, cardinalities, marginAt } = compiled;
  const { n, a, b } = sliced;
  const { count } = tree;
  const table = tableAt[c]!;
  const firstSeparator = separatorAt[0]!;
  const firstChild = tree.firstChild[c]!;
  const endChild = tree.firstChild[c + 1]!;
  const firstResidual = tree.start[c]!;
  const endResidual = firstResidual + tree.residuals[c]!;
  let log = 0;
  let reach = 1;
  for (let d = firstChild; d < endChild; d += 1) {
    if (findingsBelow[d] === 0) continue;
    log += logs[d]!;
    if (scalar[d] === 1) continue;
    reach *= least[d]!;
    refreshNest(propagation, count + d);
  }
  for (let k = firstResidual; k < endResidual; k += 1) {
    const v = tree.members[k]!;
    if (soft[v] === 0) continue;
    log += softLogs[v]!;
    for (let s = marginAt[v]!; s < marginAt[v + 1]!; s += 1) if (weights[s]! > 0) reach *= weights[s]!;
  }
  refreshNest(propagation, c);
  let source = prior;
  let whole = true;
  if (reach < tiny) {
    const made = multiplyInLogs(propagation, c);
    log += made.log;
    whole = made.whole;
    source = collected;
  } else {
    for (let d = firstChild; d < endChild; d += 1) {
      if (findingsBelow[d] === 0 || scalar[d] === 1) continue;
      const nest = count + d;
      const at = table + sliced.offsetA[nest]!;
      const from = separatorAt[d]! - firstSeparator + sliced.offsetB[nest]!;
      multiplyAlong(collected, at, source, at, ratios, from, n, a, b, loops.start[nest]!, sliced.count[nest]!);
      source = collected;
    }
    let stride = tree.sizes[c]!;
    for (let k = firstResidual; k < endResidual; k += 1) {
      const v = tree.members[k]!;
      stride /= cardinalities[v]!;
      if (soft[v] === 0) continue;
      for (let j = table; j < table + tree.sizes[c]!;) {
        for (let s = marginAt[v]!; s < marginAt[v + 1]!; s += 1)
          for (const end = j + stride; j < end; j += 1) collected[j] = source[j]! * weights[s]!;
      }
      source = collected;
    }
  }
  propagation.collectedFrom[c] = source === prior ? 0 : 1;
  logs[c] = log;
  if (c === 0 && totalByChild(propagation, source)) return;
  const separator = separatorAt[c]!;
  sumNest(propagation, c, source, table, collected, separator, separatorAt[c + 1]!);
  if (c === 0) logs[0]! += Math.log(collected[separator]!);
  else {
    messageUpwards(propagation, c);
    if (!whole) least[c] = 0;
  }
}

/** P(evidence) from a separator below the root whose belief is wanted anyway, which saves a walk over the root's table. Returns false when
 * there is none. */
function totalByChild(propagation: Propagation, source: Float64Array): boolean {
  const { compiled, findingsBelow, activeShared, beliefs, logs, now } = propagation;
  const { tree, tableAt, separatorAt } = compiled;
  for (let d = 1; d < tree.firstChild[1]!; d += 1) {
    if (findingsBelow[d] === now.findings || activeShared[d] === 0) continue;
    const size = separatorAt[d + 1]! - separatorAt[d]!;
    sumNest(propagation, tree.count + d, source, tableAt[0]!, beliefs, 0, size);
    let sum = 0;
    for (let k = 0; k < size; k += 1) sum += beliefs[k]!;
    logs[0]! += Math.log(sum);
    now.summed = d;
    return true;
  }
  return false;
}

/** Turns the sum over a clique into the message's ratio to the prior; adds the logarithm taken out to `logs[c]`. */
function messageUpwards(propagation: Propagation, c: number): void {
  const { compiled, collected, ratios, scalar, least, activeShared, logs } = propagation;
  const { prior, inverse, separatorAt } = compiled;
  const separator = separatorAt[c]!;
  const end = separatorAt[c + 1]!;
  const shift = separatorAt[0]!;
  scalar[c] = activeShared[c] === 0 ? 1 : 0;
  if (scalar[c] === 1) {
    // nothing in the separator depends on the evidence: the ratio is the same everywhere
    let sum = 0;
    let before = 0;
    for (let k = separator; k < end; k += 1) {
      sum += collected[k]!;
      if (collected[k]! > 0) before += prior[k]!;
    }
    least[c] = 1;
    logs[c]! += sum === 0 ? -Infinity : Math.log(sum / before);
    return;
  }
  let largest = 0;
  let smallest = Infinity;
  for (let k = separator; k < end; k += 1) {
    const ratio = collected[k]! * inverse[k - shift]!;
    ratios[k - shift] = ratio;
    if (ratio > largest) largest = ratio;
    if (ratio < smallest && ratio > 0) smallest = ratio;
  }
  least[c] = largest > 1 ? smallest / largest : smallest;
  if (largest >= faint) return;
  least[c] = smallest / largest;
  logs[c]! += Math.log(largest);
  if (largest > 0) for (let k = separator - shift; k < end - shift; k += 1) ratios[k]! /= largest;
}
