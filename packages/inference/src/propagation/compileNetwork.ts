import { smallJoint } from '../tree/arrangeTree.ts';
import type { CalibratedTree } from './calibratedTree.ts';
import { calibratePrior } from './calibratePrior.ts';
import { checkNumbers } from '../errors/checkNumbers.ts';
import { cliqueTree } from '../tree/cliqueTree.ts';
import { distributeEvidence } from './distributeEvidence.ts';
import { evidenceReach } from '../tree/evidenceReach.ts';
import { moralGraph } from '../tree/moralGraph.ts';
import type { Network } from '../network/network.ts';
import { createPropagation, type Propagation } from './propagation.ts';
import { createRandom } from '../random/random.ts';
import { readMarginals } from './readMarginals.ts';
import { createSlicedLoops, sliceNest } from '../tree/slicedLoops.ts';
import { treeLoops } from '../tree/treeLoops.ts';
import { TreeWidthError } from '../errors/treeWidthError.ts';
import { triangulate, type TriangulationSearch } from '../tree/triangulate.ts';

declare const madeByCompileNetwork: unique symbol;

/** A network made ready for questions: its clique tree, calibrated without evidence. Opaque: hand it to `posterior` and its kind. */
export interface CompiledNetwork extends CalibratedTree {
  /** Nobody else makes one. */
  readonly [madeByCompileNetwork]: true;
  /** The workspace of `posterior` and its kind. @internal */
  readonly shared: { propagation: Propagation | null };
}

/** Options of `compileNetwork`. */
export interface CompileNetworkOptions {
  /** Most bytes that tables may take. Default 1 GiB. */
  readonly memoryLimitBytes?: number;
  /** How long to look for a small tree. */
  readonly search?: TriangulationSearch;
}

/** Makes a network ready for questions. Costs once, so that questions are cheap.
 * @throws InferenceOptionError; TreeWidthError before any table is allocated, when tables would not fit `memoryLimitBytes`.
 * @example
 * ```ts
 * const ready = compileNetwork(network);
 * posterior(ready, { wet: 'yes' }).marginals.rain; // { yes: 0.6923, no: 0.3077 }
 * posterior(ready, { wet: 'no' }).marginals.rain; // { yes: 0.027, no: 0.973 }
 * ``` */
export function compileNetwork(network: Network, options: CompileNetworkOptions = {}): CompiledNetwork {
  return compileTree(network, options, -1);
}

/** As `compileNetwork`, with one variable in every clique; -1 for none. */
export function compileTree(network: Network, options: CompileNetworkOptions, each: number): CompiledNetwork {
  checkNumbers(
    ['/memoryLimitBytes', options.memoryLimitBytes, 0, Infinity],
    ['/search/restarts', options.search?.restarts, 0, Infinity],
    ['/search/share', options.search?.share, 0, Infinity],
  );
  const limit = options.memoryLimitBytes ?? 2 ** 30;
  const graph = moralGraph(network, each);
  const { cardinalities } = graph;
  const n = cardinalities.length;
  const elimination = triangulate(graph, options.search?.random ?? createRandom(1), options.search);
  const tree = cliqueTree(graph, elimination);
  const { count, sizes, separatorSizes, start } = tree;
  const loops = treeLoops(tree, cardinalities, each);
  const tableAt = new Int32Array(count + 1);
  const separatorAt = new Int32Array(count + 1);
  const summaryAt = new Int32Array(count + 1);
  const marginAt = new Int32Array(n + 1);
  let entries = 0;
  let largest = 0;
  let width = 0;
  for (let c = 0; c < count; c += 1) {
    entries += sizes[c]! + separatorSizes[c]!;
    largest = Math.max(largest, sizes[c]!);
    width = Math.max(width, start[c + 1]! - start[c]! - 1);
  }
  // the prior, what is collected, beliefs
  const bytes = 3 * 8 * entries;
  if (bytes > limit || entries > 2 ** 30) throw new TreeWidthError(width, largest, entries, bytes, limit);
  for (let c = 0; c < count; c += 1) {
    tableAt[c + 1] = tableAt[c]! + sizes[c]!;
    summaryAt[c + 1] = summaryAt[c]! + (c > 0 && loops.summarised[c] === 1 ? sizes[c]! / separatorSizes[c]! : 0);
  }
  separatorAt[0] = tableAt[count]!;
  for (let c = 0; c < count; c += 1) separatorAt[c + 1] = separatorAt[c]! + separatorSizes[c]!;
  for (let v = 0; v < n; v += 1) marginAt[v + 1] = marginAt[v]! + cardinalities[v]!;
  const sliced = createSlicedLoops(loops);
  const unobserved = new Int32Array(n).fill(-1);
  for (let nest = 0; nest < 2 * count + n; nest += 1) sliceNest(loops, sliced, nest, unobserved, cardinalities);
  const parts: Omit<CompiledNetwork, symbol> = {
    network,
    cardinalities,
    families: network.variables.map(({ parents, index, table }) => ({ variables: [...parents, index], values: table })),
    each,
    isJoint: each < 0 && count === 1 && sizes[0]! <= smallJoint,
    tree,
    loops,
    sliced,
    tableAt,
    separatorAt,
    summaryAt,
    marginAt,
    reach: evidenceReach(network),
    prior: new Float64Array(separatorAt[count]!),
    inverse: new Float64Array(separatorAt[count]! - separatorAt[0]!),
    priorMarginals: new Float64Array(marginAt[n]!),
    shared: { propagation: null },
  };
  const compiled = parts as CompiledNetwork;
  calibratePrior(compiled);
  if (each >= 0) return compiled;
  // prior marginals: as if every variable were open to evidence, but there is none
  const workspace = createPropagation(compiled);
  workspace.active.fill(1);
  workspace.activeHere.fill(1);
  distributeEvidence(workspace, 0, count);
  readMarginals(workspace, 0, n);
  compiled.priorMarginals.set(workspace.marginals);
  workspace.active.fill(0);
  workspace.activeHere.fill(0);
  workspace.stale.fill(3);
  compiled.shared.propagation = workspace;
  return compiled;
}
