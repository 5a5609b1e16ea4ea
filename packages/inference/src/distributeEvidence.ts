import { multiplyAlong } from './multiplyAlong.ts';
import type { Propagation } from './propagation.ts';
import { refreshNest } from './refreshNest.ts';
import { separatorIsActive } from './separatorIsActive.ts';
import { summariseTable } from './summariseTable.ts';
import { sumNest } from './sumNest.ts';

/** Makes the beliefs of the cliques `order[0] ... order[count - 1]`, each after its parent: the table with all evidence (only where children
 * read it), the separator above it, and what it does not share with its parent. Does nothing where the prior or the collected table
 * already is the answer. Evidence has been collected. Allocates nothing. */
export function distributeEvidence(propagation: Propagation, order: Int32Array, count: number): void {
  const { compiled, held, sliced, active, collectedFrom, beliefFrom, separatorFrom, madeIn, now } = propagation;
  const { collected, beliefs, downRatio, summaries } = propagation;
  const { tree, loops, prior, inverse, tableAt, separatorAt, summaryAt } = compiled;
  const { start, members, residuals, firstChild, separatorSizes, parent } = tree;
  const { n, a, b, offsetA, offsetB } = sliced;
  const { findings, round } = now;
  for (let step = 0; step < count; step += 1) {
    const c = order[step]!;
    madeIn[c] = round;
    const holds = held[c]!;
    const base = holds > 0 ? collectedFrom[c]! : 0;
    beliefFrom[c] = base;
    separatorFrom[c] = holds > 0 ? 1 : 0;
    if (c === 0) continue;
    const middle = start[c]! + residuals[c]!;
    let summarise = false;
    if (loops.summarised[c] === 1) {
      for (let k = start[c]!; k < middle; k += 1)
        if (active[members[k]!] === 1 && loops.source[members[k]!]! < 0) summarise = true;
    }
    let weigh = findings > holds && separatorIsActive(propagation, c);
    if (!summarise && !weigh) continue;
    const isLeaf = compiled.each < 0 && firstChild[c] === firstChild[c + 1];
    refreshNest(propagation, c);
    const size = separatorSizes[c]!;
    let table = base === 0 ? prior : collected;
    const at = tableAt[c]! + offsetA[c]!;
    if (weigh) {
      const separator = separatorAt[c]!;
      if (c !== now.summed) {
        const p = parent[c]!;
        const above = beliefFrom[p] === 0 ? prior : beliefFrom[p] === 1 ? collected : beliefs;
        sumNest(propagation, tree.count + c, above, tableAt[p]!, beliefs, separator, separator + size);
      }
      separatorFrom[c] = 2;
      if (isLeaf && !summarise) continue;
      if (holds > 0) {
        for (let k = 0, j = separator; k < size; k += 1, j += 1) {
          const belief = beliefs[j]!;
          downRatio[k] = belief === 0 ? 0 : belief / collected[j]!;
        }
      } else {
        const shift = separatorAt[0]!;
        for (let k = 0, j = separator; k < size; k += 1, j += 1) downRatio[k] = beliefs[j]! * inverse[j - shift]!;
      }
      if (!isLeaf) {
        multiplyAlong(beliefs, at, table, at, downRatio, offsetB[c]!, n, a, b, loops.start[c]!, sliced.count[c]!);
        beliefFrom[c] = 2;
        table = beliefs;
        weigh = false;
      }
    }
    if (!summarise) continue;
    const to = summaryAt[c]!;
    for (let k = to, end = summaryAt[c + 1]!; k < end; k += 1) summaries[k] = 0;
    const offset = Math.floor(offsetA[c]! / size);
    const inner = sliced.inner[c]!;
    summariseTable(
      table,
      at,
      downRatio,
      offsetB[c]!,
      weigh,
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
