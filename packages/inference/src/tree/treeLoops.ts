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
  /** The clique whose variables each nest loops over, or some of them. */
  readonly owner: Int32Array;
  /** Where v's marginal is read: the separator above clique c (c), or what clique c does not share with its parent (~c, which is -1 - c). */
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
    let best = ~home[v]!;
    let size = Infinity;
    for (let k = cliqueStart[v]!; k < cliqueStart[v + 1]!; k += 1) {
      const c = cliquesOf[k]!;
      if (c !== home[v] && separatorSizes[c]! < size) {
        best = c;
        size = separatorSizes[c]!;
      }
    }
    source[v] = best;
    if (best < 0 && each < 0) summarised[~best] = 1;
  }
  const start = new Int32Array(2 * count + n + 1);
  const owner = new Int32Array(2 * count + n);
  const variable: number[] = [];
  const a: number[] = [];
  const b: number[] = [];
  // the members of clique c from `low` up to `high`, beside a table over `others`
  const lay = (nest: number, c: number, low: number, high: number, others: ArrayLike<number>): void => {
    owner[nest] = c;
    let stepA = 1;
    for (let k = high - 1; k >= low; k -= 1) {
      const v = members[k]!;
      let stepB = 0;
      for (let j = others.length - 1, step = 1; j >= 0; j -= 1) {
        if (others[j] === v) stepB = step;
        step *= cardinalities[others[j]!]!;
      }
      variable.push(v);
      a.push(stepA);
      b.push(stepB);
      stepA *= cardinalities[v]!;
    }
    start[nest + 1] = variable.length;
  };
  const shared = (c: number): Int32Array => members.subarray(first[c]! + residuals[c]!, first[c + 1]!);
  for (let c = 0; c < count; c += 1) lay(c, c, first[c]!, first[c + 1]!, shared(c));
  for (let c = 0; c < count; c += 1) {
    const p = parent[c]!;
    if (c === 0) start[count + 1] = variable.length;
    else lay(count + c, p, first[p]!, first[p + 1]!, shared(c));
  }
  for (let v = 0; v < n; v += 1) {
    const from = source[v]!;
    const c = from < 0 ? ~from : from;
    const middle = first[c]! + residuals[c]!;
    const high = from < 0 && each < 0 ? middle : first[c + 1]!;
    lay(2 * count + v, c, from < 0 ? first[c]! : middle, high, each < 0 || v === each ? [v] : [v, each]);
  }
  return {
    start,
    variable: Int32Array.from(variable),
    a: Int32Array.from(a),
    b: Int32Array.from(b),
    owner,
    source,
    summarised,
  };
}
