import { compileNetwork } from './compileNetwork.ts';
import type { Network } from './network.ts';
import { QueryError } from './queryError.ts';
import type { CompiledSweep } from './sweep.ts';
import { variablePositions } from './variablePositions.ts';

/** Makes a network ready for sweeps: every answer for all states of one root at once.
 * @param options `root`: name of a variable without parents.
 * @throws QueryError `query-variable-unknown`, `root-has-parents` */
export function compileSweep(network: Network, options: { readonly root: string }): CompiledSweep {
  const root = variablePositions(network, [options.root], '/root')[0]!;
  if (network.variables[root]!.parents.length > 0) {
    throw new QueryError([
      {
        code: 'root-has-parents',
        path: '/root',
        message: `'${options.root}' has parents`,
        hint: 'sweep over a variable without parents',
      },
    ]);
  }
  const { cardinalities, families } = compileNetwork(network);
  return { network, root, cardinalities, families, known: new WeakMap() };
}
