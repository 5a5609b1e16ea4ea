import type { Network } from '../network/network.ts';
import type { Random } from '../random/random.ts';

/** Draws one state for every variable from the network, parents first. @param random one number per variable is taken.
 * @example sampleNetwork(network, () => 0.5) // { rain: 'no', wet: 'no' } */
export function sampleNetwork(network: Network, random: Random): Record<string, string> {
  const states = new Int32Array(network.variables.length);
  for (const position of network.topologicalOrder) {
    const { parents, table, states: names } = network.variables[position]!;
    let row = 0;
    for (const parent of parents) row = row * network.variables[parent]!.states.length + states[parent]!;
    let left = random();
    let state = 0;
    for (let last = 0; state < names.length; state += 1) {
      const p = table[row * names.length + state]!;
      if (p > 0) last = state;
      left -= p;
      if (left < 0 && p > 0) break;
      // rounding can leave a crumb after the last state: it belongs to the last possible one
      if (state === names.length - 1) {
        state = last;
        break;
      }
    }
    states[position] = state;
  }
  return Object.fromEntries(network.variables.map(({ name, index, states: names }) => [name, names[states[index]!]!]));
}
