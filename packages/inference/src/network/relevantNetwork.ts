import { ancestorsOf } from './ancestorsOf.ts';
import { defineNetwork } from './defineNetwork.ts';
import type { Network } from './network.ts';
import { variablePositions } from './variablePositions.ts';

/** The part of a network that matters for some variables: they and their ancestors. Posteriors of these given evidence on these are the
 * same in the part as in the whole; all else is barren. Makes questions possible in networks whose whole tree is too wide.
 * @param names what is asked and what is seen. @throws QueryError `query-variable-unknown`, `query-variable-duplicate`
 * @example relevantNetwork(network, ['rain']).variables.map(({ name }) => name) // ['rain']
 * Source: Shachter 1986, Operations Research 34:871-882. */
export function relevantNetwork(network: Network, names: readonly string[]): Network {
  const marked = ancestorsOf(network, variablePositions(network, names));
  return defineNetwork({
    variables: network.variables
      .filter(({ index }) => marked[index] === 1)
      .map(({ name, states, parents, table }) => ({
        name,
        states,
        parents: parents.map((parent) => network.variables[parent]!.name),
        table,
      })),
  });
}
