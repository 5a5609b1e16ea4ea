import type { TreeLoops } from './treeLoops.ts';

/** The loops of a tree as they are run: observed variables left out, neighbours that step alike merged. */
export interface SlicedLoops {
  readonly n: Int32Array;
  readonly a: Int32Array;
  readonly b: Int32Array;
  /** Loops left in each nest, at `loops.start[nest]`. */
  readonly count: Int32Array;
  /** How many of them, the first, move in the second table. For clique nests: those over the separator. */
  readonly inner: Int32Array;
  /** Where the slice begins in either table. */
  readonly offsetA: Int32Array;
  readonly offsetB: Int32Array;
}

/** Room for the loops of a tree. */
export function createSlicedLoops(loops: TreeLoops): SlicedLoops {
  const nests = loops.start.length - 1;
  const room = loops.variable.length;
  return {
    n: new Int32Array(room),
    a: new Int32Array(room),
    b: new Int32Array(room),
    count: new Int32Array(nests),
    inner: new Int32Array(nests),
    offsetA: new Int32Array(nests),
    offsetB: new Int32Array(nests),
  };
}

/** Rebuilds one nest for the states observed (-1: not observed). Allocates nothing. */
export function sliceNest(
  loops: TreeLoops,
  sliced: SlicedLoops,
  nest: number,
  states: Int32Array,
  cardinalities: Int32Array,
): void {
  const { start, variable } = loops;
  const { n, a, b } = sliced;
  const first = start[nest]!;
  const end = start[nest + 1]!;
  let last = first - 1;
  let offsetA = 0;
  let offsetB = 0;
  let inner = 0;
  for (let k = first; k < end; k += 1) {
    const v = variable[k]!;
    const stepA = loops.a[k]!;
    const stepB = loops.b[k]!;
    const state = states[v]!;
    if (state >= 0) {
      offsetA += state * stepA;
      offsetB += state * stepB;
      continue;
    }
    const rounds = cardinalities[v]!;
    if (rounds === 1) continue;
    if (last >= first && stepA === a[last]! * n[last]! && stepB === b[last]! * n[last]!) n[last]! *= rounds;
    else {
      last += 1;
      n[last] = rounds;
      a[last] = stepA;
      b[last] = stepB;
    }
    if (stepB !== 0) inner = last + 1 - first;
  }
  sliced.count[nest] = last + 1 - first;
  sliced.inner[nest] = inner;
  sliced.offsetA[nest] = offsetA;
  sliced.offsetB[nest] = offsetB;
}
