import { addAlong } from './addAlong.ts';
import { cliqueTree, type CliqueTree } from './cliqueTree.ts';
import { eliminateVariables } from './eliminateVariables.ts';
import { eliminationOrder } from './eliminationOrder.ts';
import type { Factor } from './factor.ts';
import { addLoop, nestOf } from './loopNest.ts';
import { multiplyAlong } from './multiplyAlong.ts';
import { createSlicedLoops, sliceNest, type SlicedLoops } from './slicedLoops.ts';
import type { SweepFactor } from './sweepFactor.ts';
import { treeLoops, type TreeLoops } from './treeLoops.ts';

/** A component as a calibrated clique tree, for each class of root states. Positions inside are local: `variables[k]` is k's. */
export interface ComponentTree {
  readonly variables: readonly number[];
  readonly tree: CliqueTree;
  /** Where each clique's table begins in a class's block, then each separator's; blocks are `length` long. */
  readonly at: readonly number[];
  readonly separatorAt: readonly number[];
  readonly length: number;
  /** P(clique | likelihoods so far, root class), P(separator | ...). */
  readonly tables: Float64Array;
  readonly logTotal: Float64Array;
  /** P(what clique c does not share with its parent | separator), root class fastest; made when first needed. */
  readonly conditionals: (Factor | null)[];
}

/** Builds and calibrates the tree; null when it would not be much smaller than the joint of `size` entries. */
export function componentTree(
  parts: readonly SweepFactor[],
  variables: readonly number[],
  firstOf: Int32Array,
  size: number,
  cardinalities: Int32Array,
): ComponentTree | null {
  const n = variables.length;
  const local = new Map(variables.map((variable, k) => [variable, k]));
  const scopes = parts.map((part) => part.variables.map((variable) => local.get(variable)!));
  const words = (n + 31) >>> 5;
  const rows = new Int32Array(n * words);
  for (const scope of scopes)
    for (const u of scope) for (const v of scope) if (u !== v) rows[u * words + (v >>> 5)]! |= 1 << (v & 31);
  const own = Int32Array.from(variables, (variable) => cardinalities[variable]!);
  const graph = { words, rows, cardinalities: own };
  const order = eliminationOrder(graph, 'weighted-fill', null, 0, Infinity)!;
  if (order.entries * 3 > size) return null;
  const tree = cliqueTree(graph, order);
  const loops = treeLoops(tree, own);
  const sliced = createSlicedLoops(loops);
  const free = new Int32Array(n).fill(-1);
  const outdated = new Uint8Array(2 * tree.count + n);
  for (let nest = 0; nest < 2 * tree.count; nest += 1) sliceNest(loops, sliced, outdated, nest, free, own);
  const at: number[] = [];
  const separatorAt: number[] = [];
  let length = 0;
  for (let c = 0; c < tree.count; c += 1) length = at[c] = length + (c > 0 ? tree.sizes[c - 1]! : 0);
  length += tree.sizes[tree.count - 1]!;
  for (let c = 0; c < tree.count; c += 1) {
    separatorAt[c] = length;
    length += tree.separatorSizes[c]!;
  }
  const tables = new Float64Array(firstOf.length * length);
  const logTotal = new Float64Array(firstOf.length);
  const made = { variables, tree, at, separatorAt, length, tables, logTotal, conditionals: at.map(() => null) };
  enter(made, parts, scopes, firstOf, own);
  firstOf.forEach((_, c) => (logTotal[c] = calibrate(made, loops, sliced, c * length)));
  return made;
}

/** Multiplies every part into the smallest clique that covers it. */
function enter(
  component: ComponentTree,
  parts: readonly SweepFactor[],
  scopes: readonly number[][],
  firstOf: Int32Array,
  own: Int32Array,
): void {
  const { tree, at, length, tables } = component;
  firstOf.forEach((_, c) => tables.fill(1, c * length, c * length + component.separatorAt[0]!));
  const cliques = at.map((_, c) => [...tree.members.subarray(tree.start[c]!, tree.start[c + 1]!)]);
  parts.forEach((part, k) => {
    let best = -1;
    cliques.forEach((clique, c) => {
      if (scopes[k]!.every((v) => clique.includes(v)) && (best < 0 || tree.sizes[c]! < tree.sizes[best]!)) best = c;
    });
    const nest = nestOf(cliques[best]!, scopes[k]!, own);
    firstOf.forEach((first, c) => {
      const to = c * length + at[best]!;
      multiplyAlong(
        tables,
        to,
        tables,
        to,
        part.blocks,
        part.classOf[first]! * part.size,
        nest.n,
        nest.a,
        nest.b,
        0,
        nest.count,
      );
    });
  });
}

/** One pass to the root and one back over the block at `from`; returns the logarithm of the total. */
function calibrate(component: ComponentTree, loops: TreeLoops, sliced: SlicedLoops, from: number): number {
  const { tree, at, separatorAt, tables } = component;
  const { n, a, b } = sliced;
  let log = 0;
  for (let c = tree.count - 1; c >= 0; c -= 1) {
    const table = from + at[c]!;
    const separator = from + separatorAt[c]!;
    addAlong(tables, table, tables, separator, n, a, b, loops.start[c]!, sliced.count[c]!);
    let largest = 0;
    for (let k = separator; k < separator + tree.separatorSizes[c]!; k += 1)
      if (tables[k]! > largest) largest = tables[k]!;
    if (largest === 0) {
      tables.fill(0, from, from + component.length);
      return -Infinity;
    }
    log += Math.log(largest);
    for (let k = separator; k < separator + tree.separatorSizes[c]!; k += 1) tables[k]! /= largest;
    if (c === 0) break;
    const nest = tree.count + c;
    const parent = from + at[tree.parent[c]!]!;
    multiplyAlong(tables, parent, tables, parent, tables, separator, n, a, b, loops.start[nest]!, sliced.count[nest]!);
  }
  let widest = 1;
  for (const size of tree.separatorSizes) if (size > widest) widest = size;
  const ratio = new Float64Array(widest);
  for (let c = 1; c < tree.count; c += 1) {
    const separator = from + separatorAt[c]!;
    const size = tree.separatorSizes[c]!;
    for (let k = 0; k < size; k += 1) {
      ratio[k] = tables[separator + k]!;
      tables[separator + k] = 0;
    }
    const nest = tree.count + c;
    addAlong(tables, from + at[tree.parent[c]!]!, tables, separator, n, a, b, loops.start[nest]!, sliced.count[nest]!);
    for (let k = 0; k < size; k += 1) ratio[k] = ratio[k] === 0 ? 0 : tables[separator + k]! / ratio[k]!;
    const table = from + at[c]!;
    multiplyAlong(tables, table, tables, table, ratio, 0, n, a, b, loops.start[c]!, sliced.count[c]!);
  }
  return log;
}

/** Proportional to P(asked | ..., root class) at [class][configuration], last of `asked` fastest. */
export function distributionInTree(
  component: ComponentTree,
  asked: readonly number[],
  classes: number,
  cardinalities: Int32Array,
): Float64Array {
  const { tree, variables, tables, length } = component;
  const own = Int32Array.from(variables, (variable) => cardinalities[variable]!);
  const wanted = asked.map((variable) => variables.indexOf(variable));
  let best = -1;
  let bestScope: number[] = [];
  let bestSize = Infinity;
  for (let k = 0; k < 2 * tree.count; k += 1) {
    const c = k % tree.count;
    const isClique = k < tree.count;
    const scope = [...tree.members.subarray(tree.start[c]! + (isClique ? 0 : tree.residuals[c]!), tree.start[c + 1]!)];
    const size = isClique ? tree.sizes[c]! : tree.separatorSizes[c]!;
    if (size < bestSize && (isClique || c > 0) && wanted.every((v) => scope.includes(v))) {
      best = isClique ? component.at[c]! : component.separatorAt[c]!;
      bestScope = scope;
      bestSize = size;
    }
  }
  if (best < 0) return acrossCliques(component, wanted, classes, own);
  const size = wanted.reduce((product, v) => product * own[v]!, 1);
  const values = new Float64Array(classes * size);
  const nest = nestOf(bestScope, wanted, own, 1);
  addLoop(nest, classes, length, size);
  addAlong(tables, best, values, 0, nest.n, nest.a, nest.b, 0, nest.count);
  return values;
}

/** Multiplies P(clique) / P(separator) of the cliques that lie between the asked variables, and sums the others out; class fastest inside. */
function acrossCliques(
  component: ComponentTree,
  wanted: readonly number[],
  classes: number,
  own: Int32Array,
): Float64Array {
  const { tree } = component;
  const needed = new Uint8Array(tree.count);
  const factors: Factor[] = [];
  const batch = own.length;
  for (let c = tree.count - 1; c >= 0; c -= 1) {
    const scope = [...tree.members.subarray(tree.start[c]!, tree.start[c + 1]!)];
    if (scope.slice(0, tree.residuals[c]).some((v) => wanted.includes(v))) needed[c] = 1;
    // P(what is not shared | separator) sums to one: a clique below which nothing is asked falls away
    if (needed[c] === 0) continue;
    if (c > 0) needed[tree.parent[c]!] = 1;
    factors.push((component.conditionals[c] ??= conditionalOf(component, c, scope, classes)));
  }
  const { values } = eliminateVariables(factors, wanted, batch, Int32Array.of(...own, classes));
  const size = values.length / classes;
  const result = new Float64Array(values.length);
  for (let k = 0; k < classes; k += 1)
    for (let i = 0; i < size; i += 1) result[k * size + i] = values[i * classes + k]!;
  return result;
}

function conditionalOf(component: ComponentTree, c: number, scope: readonly number[], classes: number): Factor {
  const { tree, at, separatorAt, tables, length, variables } = component;
  const size = tree.sizes[c]!;
  const block = tree.separatorSizes[c]!;
  const values = new Float64Array(size * classes);
  for (let k = 0; k < classes; k += 1) {
    const table = k * length + at[c]!;
    const separator = k * length + separatorAt[c]!;
    for (let i = 0, j = 0; i < size; i += 1) {
      const p = tables[table + i]!;
      values[i * classes + k] = p === 0 ? 0 : c === 0 ? p : p / tables[separator + j]!;
      j = j + 1 === block ? 0 : j + 1;
    }
  }
  return { variables: [...scope, variables.length], values };
}
