import { eliminationOrder } from '../tree/eliminationOrder.ts';

/** A greedy order in which to sum all variables of some factors out but the kept ones (by weighted fill).
 * @param kept positions that stay. @returns positions in the network, first eliminated first. */
export function factorOrder(
  factors: readonly { readonly variables: readonly number[] }[],
  kept: ReadonlySet<number>,
  cardinalities: ArrayLike<number>,
): number[] {
  const positions = [...new Set(factors.flatMap((factor) => factor.variables))];
  const local = new Map(positions.map((position, k) => [position, k]));
  const words = (positions.length + 31) >>> 5;
  const rows = new Int32Array(positions.length * words);
  for (const { variables } of factors) {
    for (const u of variables) {
      for (const v of variables) {
        const [a, b] = [local.get(u)!, local.get(v)!];
        if (a !== b) rows[a * words + (b >>> 5)]! |= 1 << (b & 31);
      }
    }
  }
  const graph = { words, rows, cardinalities: Int32Array.from(positions, (position) => cardinalities[position]!) };
  const last = Uint8Array.from(positions, (position) => (kept.has(position) ? 1 : 0));
  return Array.from(eliminationOrder(graph, 'weighted-fill', null, 0, Infinity, last)!.order, (k) => positions[k]!);
}
