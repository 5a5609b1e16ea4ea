import type { CliqueTree } from './cliqueTree.ts';

/** The loops of every step of propagation, by nest; loops of one nest stand innermost first. Nests are numbered
 * - c: clique c beside the separator towards its parent (the root: beside one number),
 * - count + c: the parent of clique c beside that separator (unused for the root),
 * - 2 count + v: the table that variable v's marginal is read from, beside that marginal; when answers are kept apart by one variable
 *   (`each`), beside a table of v's states by that variable's (fastest). */
export interface TreeLoops {
  /** Loops of nest k: from `start[k]` up to `start[k + 1]`. */
  readonly start: Int32Array;
  /** Variable of each loop, and the steps it makes in the two tables. */
  readonly variable: Int32Array;
  readonly a: Int32Array;
  readonly b: Int32Array;
  /** Nests that loop over variable v: `nestsOf[nestStart[v]] ...`. */
  readonly nestStart: Int32Array;
  readonly nestsOf: Int32Array;
  /** Where v's marginal is read: the separator above clique c (c), or what clique c does not share with its parent (-1 - c). */
  readonly source: Int32Array;
  /** 1 for cliques that are such a source themselves. */
  readonly summarised: Uint8Array;
}

/** Lays out all loops of a tree once, so that evidence has only to leave some out. @param each see above; -1 for none. If given, every
 * clique has it, and a source is a separator or a whole clique. */
export function treeLoops(tree: CliqueTree, cardinalities: Int32Array, each = -1): TreeLoops {
  const { count, parent, start: first, members, residuals, separatorSizes, home, cliqueStart, cliquesOf } = tree;
  const n = cardinalities.length;
  const source = new Int32Array(n);
  const summarised = new Uint8Array(count);
  for (let v = 0; v < n; v += 1) {
    // the smallest separator that has it; private variables: the part of their only clique that is not shared
    let best = -1 - home[v]!;
    let size = Infinity;
    for (let k = cliqueStart[v]!; k < cliqueStart[v + 1]!; k += 1) {
      const c = cliquesOf[k]!;
      if (c !== home[v] && separatorSizes[c]! < size) {
        best = c;
        size = separatorSizes[c]!;
      }
    }
    source[v] = best;
    if (best < 0 && each < 0) summarised[-1 - best] = 1;
  }
  const start = new Int32Array(2 * count + n + 1);
  // no nest has more loops than the widest clique has variables
  let room = 0;
  for (let c = 0; c < count; c += 1) room = Math.max(room, (2 * count + n) * (first[c + 1]! - first[c]!));
  const variable = new Int32Array(room);
  const a = new Int32Array(room);
  const b = new Int32Array(room);
  const uses = new Int32Array(n + 1);
  const step = new Int32Array(n); // steps of variables in the separator at hand
  let at = 0;
  const loop = (v: number, stepA: number, stepB: number): void => {
    variable[at] = v;
    a[at] = stepA;
    b[at] = stepB;
    uses[v + 1]! += 1;
    at += 1;
  };
  for (let c = 0; c < count; c += 1) {
    start[c] = at;
    let stride = 1;
    for (let k = first[c + 1]! - 1; k >= first[c]!; k -= 1) {
      const v = members[k]!;
      loop(v, stride, k < first[c]! + residuals[c]! ? 0 : stride);
      stride *= cardinalities[v]!;
    }
  }
  for (let c = 0; c < count; c += 1) {
    start[count + c] = at;
    if (c === 0) continue;
    let stride = 1;
    const from = first[c]! + residuals[c]!;
    for (let k = first[c + 1]! - 1; k >= from; k -= 1) {
      step[members[k]!] = stride;
      stride *= cardinalities[members[k]!]!;
    }
    const p = parent[c]!;
    stride = 1;
    for (let k = first[p + 1]! - 1; k >= first[p]!; k -= 1) {
      const v = members[k]!;
      loop(v, stride, step[v]!);
      stride *= cardinalities[v]!;
    }
    for (let k = from; k < first[c + 1]!; k += 1) step[members[k]!] = 0;
  }
  for (let v = 0; v < n; v += 1) {
    start[2 * count + v] = at;
    const from = source[v]!;
    const c = from < 0 ? -1 - from : from;
    const low = from < 0 ? first[c]! : first[c]! + residuals[c]!;
    const high = from < 0 && each < 0 ? first[c]! + residuals[c]! : first[c + 1]!;
    const width = each < 0 || v === each ? 1 : cardinalities[each]!;
    let stride = 1;
    for (let k = high - 1; k >= low; k -= 1) {
      const u = members[k]!;
      loop(u, stride, u === v ? width : u === each ? 1 : 0);
      stride *= cardinalities[u]!;
    }
  }
  start[2 * count + n] = at;
  for (let v = 0; v < n; v += 1) uses[v + 1]! += uses[v]!;
  const nestStart = uses;
  const nestsOf = new Int32Array(at);
  const filled = nestStart.slice(0, n);
  for (let nest = 0; nest < 2 * count + n; nest += 1) {
    for (let k = start[nest]!; k < start[nest + 1]!; k += 1) {
      const v = variable[k]!;
      nestsOf[filled[v]!] = nest;
      filled[v]! += 1;
    }
  }
  return {
    start,
    variable: variable.slice(0, at),
    a: a.slice(0, at),
    b: b.slice(0, at),
    nestStart,
    nestsOf,
    source,
    summarised,
  };
}
