import type { Factor } from './factor.ts';
import type { Network } from './network.ts';

/** A network made ready for questions. Opaque: hand it to `posterior`, `jointPosterior` and their kind. */
export interface CompiledNetwork {
  readonly network: Network;
  /** Number of states by position. */
  readonly cardinalities: Int32Array;
  /** P(variable | parents) by position. */
  readonly families: readonly Factor[];
}

/** Makes a network ready for questions. Costs once, so that questions are cheap. */
export function compileNetwork(network: Network): CompiledNetwork {
  return {
    network,
    cardinalities: Int32Array.from(network.variables, (variable) => variable.states.length),
    families: network.variables.map((variable) => ({
      variables: [...variable.parents, variable.index],
      values: variable.table,
    })),
  };
}
