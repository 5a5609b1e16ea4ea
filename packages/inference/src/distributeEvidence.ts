import { addAlong } from './addAlong.ts';
import { multiplyAlong } from './multiplyAlong.ts';
import type { Propagation } from './propagation.ts';
import { sliceNest } from './slicedLoops.ts';
import { summariseTable } from './summariseTable.ts';

/** Makes the belief of clique c, whose parent's is made: its table with all evidence (only where children read it), the separator above
 * it, and what it does not share with its parent. Does nothing where the prior or the collected table already is the answer.
 * Allocates nothing. */
export function distributeTo(propagation: Propagation, c: number): void {
  const { compiled, held, sliced, states, outdated, collectedFrom, beliefFrom, separatorFrom, now } = propagation;
  const { tree, loops, tableAt, separatorAt, cardinalities } = compiled;
  propagation.madeIn[c] = now.round;
  const base = held[c]! > 0 ? collectedFrom[c]! : 0;
  beliefFrom[c] = base;
  separatorFrom[c] = held[c]! > 0 ? 1 : 0;
  if (c === 0) return;
  const summarise = loops.summarised[c] === 1 && privateActive(propagation, c);
  const isLeaf = tree.firstChild[c] === tree.firstChild[c + 1];
  let weigh = now.findings > held[c]! && separatorActive(propagation, c);
  if (isLeaf && !summarise && !weigh) return;
  if (outdated[c] === 1) {
    sliceNest(loops, sliced, c, states, cardinalities);
    outdated[c] = 0;
  }
  const { n, a, b } = sliced;
  const size = tree.separatorSizes[c]!;
  let table = tablesOf(propagation, base);
  if (weigh) {
    const nest = tree.count + c;
    if (outdated[nest] === 1) {
      sliceNest(loops, sliced, nest, states, cardinalities);
      outdated[nest] = 0;
    }
    const { beliefs, downRatio } = propagation;
    const separator = separatorAt[c]!;
    for (let k = separator; k < separator + size; k += 1) beliefs[k] = 0;
    const p = tree.parent[c]!;
    const parents = tablesOf(propagation, beliefFrom[p]!);
    addAlong(
      parents,
      tableAt[p]! + sliced.offsetA[nest]!,
      beliefs,
      separator + sliced.offsetB[nest]!,
      n,
      a,
      b,
      loops.start[nest]!,
      sliced.count[nest]!,
    );
    separatorFrom[c] = 2;
    const up = tablesOf(propagation, held[c]! > 0 ? 1 : 0);
    for (let k = 0; k < size; k += 1) {
      const belief = beliefs[separator + k]!;
      downRatio[k] = belief === 0 ? 0 : belief / up[separator + k]!;
    }
    if (!isLeaf) {
      const at = tableAt[c]! + sliced.offsetA[c]!;
      multiplyAlong(beliefs, at, table, at, downRatio, sliced.offsetB[c]!, n, a, b, loops.start[c]!, sliced.count[c]!);
      beliefFrom[c] = 2;
      table = beliefs;
      weigh = false;
    }
  }
  if (summarise) {
    const to = compiled.summaryAt[c]! + Math.floor(sliced.offsetA[c]! / size);
    summariseTable(
      table,
      tableAt[c]! + sliced.offsetA[c]!,
      propagation.downRatio,
      sliced.offsetB[c]!,
      weigh,
      propagation.summaries,
      to,
      n,
      a,
      loops.start[c]!,
      sliced.inner[c]!,
      sliced.count[c]!,
      size,
    );
  }
}

/** The array that holds tables of a kind: 0 the prior, 1 collected, 2 beliefs. */
export function tablesOf(propagation: Propagation, kind: number): Float64Array {
  return kind === 0 ? propagation.compiled.prior : kind === 1 ? propagation.collected : propagation.beliefs;
}

function separatorActive(propagation: Propagation, c: number): boolean {
  const { tree } = propagation.compiled;
  for (let k = tree.start[c]! + tree.residuals[c]!, end = tree.start[c + 1]!; k < end; k += 1)
    if (propagation.active[tree.members[k]!] === 1) return true;
  return false;
}

function privateActive(propagation: Propagation, c: number): boolean {
  const { tree, loops } = propagation.compiled;
  for (let k = tree.start[c]!, end = k + tree.residuals[c]!; k < end; k += 1) {
    const v = tree.members[k]!;
    if (propagation.active[v] === 1 && loops.source[v]! < 0) return true;
  }
  return false;
}
