import { cliqueBelief } from './cliqueBelief.ts';
import { multiplyAlong } from '../loops/multiplyAlong.ts';
import type { Propagation } from './propagation.ts';
import { refreshNest } from './refreshNest.ts';
import { summariseTable } from '../loops/summariseTable.ts';
import { sumNest } from './sumNest.ts';

/** Brings the beliefs of the cliques from `from` up to, not including, `end` up to date; those above are: the table with all evidence (only
 * where children read it), the separator above it, and what it does not share with its parent. Does nothing where the prior or the
 * collected table already is the answer, and nothing where neither the clique nor the message to it has changed. Evidence has been
 * collected. Allocates nothing. */
export function distributeEvidence(propagation: Propagation, from: number, end: number): void {
  const { compiled, findingsBelow, sliced, activeShared, activeHere, collectedFrom, separatorFrom, madeIn, now } =
    propagation;
  const { collected, beliefs, downRatio, summaries, changedIn, stale } = propagation;
  const { tree, loops, prior, inverse, tableAt, separatorAt, summaryAt } = compiled;
  const { firstChild, parent } = tree;
  const { n, a, b, offsetA, offsetB } = sliced;
  const { findings, round } = now;
  for (let c = from; c < end; c += 1) {
    const anew = stale[c]! > 0;
    const current = !anew && (c === 0 || changedIn[parent[c]!]! <= madeIn[c]!);
    madeIn[c] = round;
    if (current) continue;
    const holds = findingsBelow[c]!;
    const separator = separatorAt[c]!;
    const size = separatorAt[c + 1]! - separator;
    const weigh = findings > holds && activeShared[c]! > 0;
    const message = c === now.summed ? beliefs : downRatio;
    if (weigh && c !== now.summed) {
      const p = parent[c]!;
      sumNest(propagation, tree.count + c, cliqueBelief(propagation, p), tableAt[p]!, message, 0, size);
    }
    if (!anew && weigh === (separatorFrom[c] === 2) && !(weigh && differ(message, beliefs, separator, size))) continue;
    stale[c] = 0;
    changedIn[c] = round;
    separatorFrom[c] = holds > 0 ? 1 : 0;
    if (c === 0) continue;
    const summarise = activeHere[c]! > 0 && loops.summarised[c] === 1;
    if (!summarise && !weigh) continue;
    const isLeaf = compiled.each < 0 && firstChild[c] === firstChild[c + 1];
    refreshNest(propagation, c);
    const table = collectedFrom[c] === 1 ? collected : prior;
    const at = tableAt[c]! + offsetA[c]!;
    if (weigh) {
      separatorFrom[c] = 2;
      for (let k = 0, j = separator, i = separator - separatorAt[0]!; k < size; k += 1, j += 1, i += 1) {
        const belief = message[k]!;
        beliefs[j] = belief;
        if (belief === 0) downRatio[k] = 0;
        else downRatio[k] = holds > 0 ? belief / collected[j]! : belief * inverse[i]!;
      }
      if (!isLeaf) {
        multiplyAlong(beliefs, at, table, at, downRatio, offsetB[c]!, n, a, b, loops.start[c]!, sliced.count[c]!);
      }
    } else downRatio.fill(1, 0, size);
    if (!summarise) continue;
    const to = summaryAt[c]!;
    for (let k = to; k < summaryAt[c + 1]!; k += 1) summaries[k] = 0;
    const offset = (offsetA[c]! / size) | 0;
    const inner = sliced.inner[c]!;
    summariseTable(
      table,
      at,
      downRatio,
      offsetB[c]!,
      summaries,
      to + offset,
      n,
      a,
      loops.start[c]!,
      inner,
      sliced.count[c]!,
      size,
    );
  }
}

/** Messages whose numbers differ by no more than this share, after scaling, say the same: some eight roundings. */
const alike = 2 ** -49;

/** Whether a message is not the one in `table` times some factor, up to rounding: if it is, what changed does not reach this part. */
function differ(message: Float64Array, table: Float64Array, at: number, size: number): boolean {
  let factor = 0;
  for (let k = 0; k < size; k += 1) {
    const value = message[k]!;
    const before = table[at + k]!;
    if (factor === 0 && value > 0) factor = value / before;
    if ((value === 0) !== (before === 0) || Math.abs(value - before * factor) > alike * value) return true;
  }
  return false;
}
