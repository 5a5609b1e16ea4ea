import type { Network } from '../network/network.ts';

/** An undirected graph over a network's variables: row v of `rows` is the bit set of v's neighbours, `words` 32-bit words each. */
export interface MoralGraph {
  readonly words: number;
  readonly rows: Int32Array;
  /** Number of states by position. */
  readonly cardinalities: Int32Array;
  /** Smallest positive number of each variable's table. */
  readonly least: Float64Array;
}

/** Joins every family (a variable and its parents) pairwise. @param each variable that is joined to all others; -1 for none.
 * Source: Lauritzen & Spiegelhalter 1988, J. Royal Statistical Society B 50:157-224. */
export function moralGraph(network: Network, each = -1): MoralGraph {
  const count = network.variables.length;
  const words = (count + 31) >>> 5;
  const rows = new Int32Array(count * words);
  const cardinalities = new Int32Array(count);
  const least = new Float64Array(count).fill(1);
  for (let v = 0; v < count; v += 1) {
    const variable = network.variables[v]!;
    cardinalities[v] = variable.states.length;
    const { parents, table } = variable;
    for (const p of table) if (p > 0 && p < least[v]!) least[v] = p;
    for (let k = 0; k < parents.length; k += 1) {
      const p = parents[k]!;
      joinPair(rows, words, v, p);
      for (let j = 0; j < k; j += 1) joinPair(rows, words, p, parents[j]!);
    }
    if (each >= 0 && each !== v) joinPair(rows, words, v, each);
  }
  return { words, rows, cardinalities, least };
}

function joinPair(rows: Int32Array, words: number, a: number, b: number): void {
  rows[a * words + (b >>> 5)]! |= 1 << (b & 31);
  rows[b * words + (a >>> 5)]! |= 1 << (a & 31);
}
