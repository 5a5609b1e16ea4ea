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
  const head = new Int32Array(above.length).fill(-1);
  const link = new Int32Array(above.length);
  for (let k = 0; k < above.length; k += 1) {
    if (above[k]! < 0) continue;
    link[k] = head[above[k]!]!;
    head[above[k]!] = k;
  }
  const steps = [root];
  const parent = [-1];
  const firstChild = [];
  for (let c = 0; c < steps.length; c += 1) {
    firstChild.push(steps.length);
    for (let d = head[steps[c]!]!; d >= 0; d = link[d]!) {
      steps.push(d);
      parent.push(c);
    }
  }
  firstChild.push(steps.length);
  return { steps, parent: new Int32Array(parent), firstChild: new Int32Array(firstChild) };
}

function layOut(graph: MoralGraph, arranged: ArrangedTree, cliqueEntries: number): CliqueTree {
  const { words, cardinalities } = graph;
  const n = cardinalities.length;
  const { steps, parent, firstChild } = breadthFirst(arranged.parent, 0);
  const count = steps.length;
  const cliques = arranged.sets;
  const tables = arranged.sizes;
  const home = new Int32Array(n).fill(-1);
  const shares = new Int32Array(n);
  const start = new Int32Array(count + 1);
  for (let c = 0, total = 0; c < count; c += 1) {
    const base = steps[c]! * words;
    for (let w = 0; w < words; w += 1) {
      for (let bits = cliques[base + w]!; bits !== 0; bits &= bits - 1) {
        const v = (w << 5) + 31 - Math.clz32(bits & -bits);
        if (home[v] === -1) home[v] = c;
        shares[v]! += 1;
        total += 1;
      }
    }
    start[c + 1] = total;
  }
  const members = new Int32Array(start[count]!);
  const residuals = new Int32Array(count);
  const sizes = new Float64Array(count);
  const separatorSizes = new Float64Array(count).fill(1);
  const cliqueStart = new Int32Array(n + 1);
  for (let v = 0; v < n; v += 1) cliqueStart[v + 1] = cliqueStart[v]! + shares[v]!;
  const cliquesOf = new Int32Array(members.length);
  const filled = cliqueStart.slice(0, n);
  for (let c = 0; c < count; c += 1) {
    const base = steps[c]! * words;
    sizes[c] = tables[steps[c]!]!;
    const first = start[c]!;
    let end = first;
    for (let w = 0; w < words; w += 1) {
      for (let bits = cliques[base + w]!; bits !== 0; bits &= bits - 1) {
        const v = (w << 5) + 31 - Math.clz32(bits & -bits);
        cliquesOf[filled[v]!] = c;
        filled[v]! += 1;
        if (home[v] === c) residuals[c]! += 1;
        else separatorSizes[c]! *= cardinalities[v]!;
        // nearest home slowest; within one home the widely shared fastest
        let at = end;
        for (; at > first; at -= 1) {
          const u = members[at - 1]!;
          const later = home[u]! - home[v]!;
          if (later > 0 || (later === 0 && shares[u]! <= shares[v]!)) break;
          members[at] = u;
        }
        members[at] = v;
        end += 1;
      }
    }
  }
  return {
    count,
    cliqueEntries,
    parent,
    start,
    members,
    residuals,
    sizes,
    separatorSizes,
    home,
    cliqueStart,
    cliquesOf,
    firstChild,
  };
}
