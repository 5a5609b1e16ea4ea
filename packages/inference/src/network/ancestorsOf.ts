import type { Network } from './network.ts';

/** Marks the given variables and all their ancestors: every other variable is barren for questions about these alone.
 * @returns 1 at marked positions, length = number of variables.
 * Source: Shachter 1986, Operations Research 34:871-882 (barren nodes). */
export function ancestorsOf(network: Network, positions: Iterable<number>): Uint8Array {
  const marked = new Uint8Array(network.variables.length);
  const stack = [...positions];
  for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
    if (marked[at] === 1) continue;
    marked[at] = 1;
    stack.push(...network.variables[at]!.parents);
  }
  return marked;
}
