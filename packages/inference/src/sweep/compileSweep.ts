import { checkNumbers } from '../errors/checkNumbers.ts';
import type { Network } from '../network/network.ts';
import { QueryError } from '../errors/queryError.ts';
import type { CompiledSweep } from './sweep.ts';
import { splitByRoot } from './sweepFactor.ts';
import { initialSweepState } from './sweepState.ts';
import { variablePositions } from '../network/variablePositions.ts';

/** Options of `compileSweep`. */
export interface CompileSweepOptions {
  /** Name of a variable without parents. */
  readonly root: string;
  /** Bytes of derived tables to keep between sweeps; beyond it all are dropped. Default 64 MiB. */
  readonly memoryLimitBytes?: number;
}

/** Makes a network ready for sweeps: every answer for all states of one root at once.
 * What is derived is kept, so that asking again with one likelihood more costs only what it touches.
 * @throws QueryError `query-variable-unknown`, `root-has-parents`; InferenceOptionError
 * @example
 * ```ts
 * const sweep = compileSweep(network, { root: 'rain' });
 * sweepRoot(sweep, { likelihoods: [], targets: [], posteriorsOf: ['wet'] }).posteriors.get('wet')?.at(0); // 0.9
 * ``` */
export function compileSweep(network: Network, options: CompileSweepOptions): CompiledSweep {
  checkNumbers(['/memoryLimitBytes', options.memoryLimitBytes, 0, Infinity]);
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
  const cardinalities = Int32Array.from(network.variables, (variable) => variable.states.length);
  const families = network.variables.map(({ parents, index, table }) =>
    splitByRoot([...parents, index], table, 1, root, cardinalities, false),
  );
  const parts: Omit<CompiledSweep, symbol> = {
    network,
    root,
    cardinalities,
    families,
    likelihoods: new WeakMap(),
    targets: new WeakMap(),
    start: initialSweepState(families, root, cardinalities),
    cache: { entries: 0, limit: (options.memoryLimitBytes ?? 1 << 26) / 8 },
  };
  return parts as CompiledSweep;
}
