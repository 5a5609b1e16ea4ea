import type { Network } from '../network/network.ts';

/** For every variable the set of variables that a finding on it can change: the descendants of its ancestors (itself one of either). All
 * others are d-separated from it as long as nothing else is known.
 * @returns one bit set per variable, (number of variables + 31) >>> 5 words each.
 * Source: Geiger, Verma & Pearl 1990, Networks 20:507-534. */
export function evidenceReach({ variables, topologicalOrder: order }: Network): Int32Array {
  const words = (variables.length + 31) >>> 5;
  const below = new Int32Array(variables.length * words);
  const merge = (to: Int32Array, t: number, from: number): void => {
    for (let w = 0; w < words; w += 1) to[t * words + w]! |= below[from * words + w]!;
  };
  for (let k = order.length - 1; k >= 0; k -= 1) {
    const v = order[k]!;
    below[v * words + (v >>> 5)]! |= 1 << (v & 31);
    for (const p of variables[v]!.parents) merge(below, p, v);
  }
  // parents first: what a parent reaches, its child reaches
  for (const v of order) for (const p of variables[v]!.parents) merge(below, v, p);
  return below;
}
