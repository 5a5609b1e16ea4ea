import type { EliminationOrder } from './eliminationOrder.ts';
import { arrangeTree, type ArrangedTree } from './arrangeTree.ts';
import type { MoralGraph } from './moralGraph.ts';

/** A rooted clique tree (junction tree). Cliques are numbered so that parents come before children; clique 0 is the root.
 * In every table the variables stand in one common order: first (slowest) those whose home the clique is, last (fastest) those shared
 * with its parent, so that the separator's table is laid out exactly like the fast end of the clique's. */
export interface CliqueTree {
  readonly count: number;
  /** Table entries of the maximal cliques of the triangulation, before small ones were merged and extra ones added. */
  readonly cliqueEntries: number;
  /** -1 for the root. */
  readonly parent: Int32Array;
  /** Members of clique c: `members[start[c]] ... members[start[c + 1] - 1]`, slowest first. */
  readonly start: Int32Array;
  readonly members: Int32Array;
  /** How many of the first members have their home here; the rest are the separator towards the parent. */
  readonly residuals: Int32Array;
  /** Table entries of each clique and of the separator towards its parent (1 when empty). */
  readonly sizes: Float64Array;
  readonly separatorSizes: Float64Array;
  /** Variable -> the clique nearest the root that has it. */
  readonly home: Int32Array;
  /** Cliques that have variable v: `cliquesOf[cliqueStart[v]] ...`. */
  readonly cliqueStart: Int32Array;
  readonly cliquesOf: Int32Array;
  /** Children of clique c: the cliques from `firstChild[c]` up to, not including, `firstChild[c + 1]`. */
  readonly firstChild: Int32Array;
}

/** Builds the tree of maximal cliques of an elimination order, rooted at the largest, its children hung as `arrangeTree` does.
 * Parts that are not connected hang together by empty separators. */
export function cliqueTree(graph: MoralGraph, elimination: EliminationOrder): CliqueTree {
  const { words } = graph;
  const { cliques, tables, next, within } = elimination;
  const n = next.length;
  const above = new Int32Array(n).fill(-1);
  let largest = 0;
  let lastTop = -1;
  for (let k = 0; k < n; k += 1) {
    if (within[k] !== k) continue;
    if (tables[k]! > tables[largest]!) largest = k;
    let p = next[k]!;
    while (p < n && within[p] === k) p = next[p]!;
    above[k] = p < n ? within[p]! : lastTop;
    if (p >= n) lastTop = k;
  }
  // the largest becomes the root: the path above it is turned round
  for (let k = largest, below = -1; k >= 0;) {
    const up = above[k]!;
    above[k] = below;
    below = k;
    k = up;
  }
  const { steps, parent } = breadthFirst(above, largest);
  const sets = new Int32Array(parent.length * words);
  steps.forEach((step, c) => sets.set(cliques.subarray(step * words, (step + 1) * words), c * words));
  const sizes = Float64Array.from(steps, (step) => tables[step]!);
  return layOut(graph, arrangeTree(graph, { sets, sizes, parent }), elimination.entries);
}

/** Numbers a tree's nodes from the root, the children of one node in a row. @param above the parent of each node; -1 for the root and
 * for nodes that are not part of the tree. @returns the nodes in their new order; their parents and children in the new numbers. */
function breadthFirst(
  above: Int32Array,
  root: number,
): { steps: number[]; parent: Int32Array; firstChild: Int32Array } {
  const steps = [root];
  const parent = [-1];
  const firstChild = [];
  for (let c = 0; c < steps.length; c += 1) {
    firstChild.push(steps.length);
    for (let k = above.length - 1; k >= 0; k -= 1) {
      if (above[k] !== steps[c]) continue;
      steps.push(k);
      parent.push(c);
    }
  }
  firstChild.push(steps.length);
  return { steps, parent: new Int32Array(parent), firstChild: new Int32Array(firstChild) };
}

function layOut(
  graph: MoralGraph,
  { sets, sizes: tables, parent: above }: ArrangedTree,
  cliqueEntries: number,
): CliqueTree {
  const { words, cardinalities } = graph;
  const n = cardinalities.length;
  const { steps, parent, firstChild } = breadthFirst(above, 0);
  const count = steps.length;
  const home = new Int32Array(n).fill(-1);
  const cliquesOf: number[][] = Array.from({ length: n }, () => []);
  const lists = steps.map((step, c) => {
    const list: number[] = [];
    for (let w = 0; w < words; w += 1) {
      for (let bits = sets[step * words + w]!; bits !== 0; bits &= bits - 1) {
        const v = (w << 5) + 31 - Math.clz32(bits & -bits);
        if (home[v] === -1) home[v] = c;
        cliquesOf[v]!.push(c);
        list.push(v);
      }
    }
    return list;
  });
  const start = new Int32Array(count + 1);
  const residuals = new Int32Array(count);
  const separatorSizes = new Float64Array(count).fill(1);
  lists.forEach((list, c) => {
    start[c + 1] = start[c]! + list.length;
    // nearest home slowest; within one home the widely shared fastest
    list.sort((u, v) => home[v]! - home[u]! || cliquesOf[u]!.length - cliquesOf[v]!.length);
    for (const v of list) {
      if (home[v] === c) residuals[c]! += 1;
      else separatorSizes[c]! *= cardinalities[v]!;
    }
  });
  const cliqueStart = new Int32Array(n + 1);
  cliquesOf.forEach((cliques, v) => (cliqueStart[v + 1] = cliqueStart[v]! + cliques.length));
  return {
    count,
    cliqueEntries,
    parent,
    start,
    members: Int32Array.from(lists.flat()),
    residuals,
    sizes: Float64Array.from(steps, (step) => tables[step]!),
    separatorSizes,
    home,
    cliqueStart,
    cliquesOf: Int32Array.from(cliquesOf.flat()),
    firstChild,
  };
}
