import { firstStepAfter, type EliminationOrder } from './eliminationOrder.ts';
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
  const { words, cardinalities } = graph;
  const { order, cliques } = elimination;
  const n = order.length;
  const stepOf = new Int32Array(n);
  for (let k = 0; k < n; k += 1) stepOf[order[k]!] = k;
  const sizeOf = new Int32Array(n);
  const next = new Int32Array(n);
  const node = new Int32Array(n).fill(-1); // step -> step of the maximal clique that holds it
  const tables = new Float64Array(n);
  let largest = -1;
  let count = 0;
  for (let k = 0; k < n; k += 1) {
    let size = 1;
    for (let w = 0; w < words; w += 1) {
      for (let bits = cliques[k * words + w]!; bits !== 0; bits &= bits - 1) {
        sizeOf[k]! += 1;
        size *= cardinalities[(w << 5) + 31 - Math.clz32(bits & -bits)]!;
      }
    }
    tables[k] = size;
    next[k] = firstStepAfter(cliques, k, words, stepOf);
  }
  for (let k = 0; k < n; k += 1) {
    if (node[k] === -1) node[k] = k;
    const p = next[k]!;
    if (p < n && node[p] === -1 && sizeOf[p] === sizeOf[k]! - 1) node[p] = node[k]!;
    if (node[k] !== k) continue;
    count += 1;
    if (largest < 0 || tables[k]! > tables[largest]!) largest = k;
  }
  // undirected neighbours as linked lists
  const head = new Int32Array(n).fill(-1);
  const link = new Int32Array(2 * n);
  const to = new Int32Array(2 * n);
  let links = 0;
  const connect = (a: number, b: number): void => {
    to[links] = b;
    link[links] = head[a]!;
    head[a] = links;
    links += 1;
  };
  let lastTop = -1;
  for (let k = 0; k < n; k += 1) {
    if (node[k] !== k) continue;
    let p = next[k]!;
    while (p < n && node[p] === k) p = next[p]!;
    const other = p < n ? node[p]! : lastTop;
    if (p >= n) lastTop = k;
    if (other < 0) continue;
    connect(k, other);
    connect(other, k);
  }
  const sets = new Int32Array(count * words);
  const sizes = new Float64Array(count);
  const parent = new Int32Array(count).fill(-1);
  const steps = new Int32Array(count);
  steps[0] = largest;
  for (let c = 0, made = 1; c < count; c += 1) {
    const step = steps[c]!;
    sizes[c] = tables[step]!;
    for (let w = 0; w < words; w += 1) sets[c * words + w] = cliques[step * words + w]!;
    for (let e = head[step]!; e >= 0; e = link[e]!) {
      if (c > 0 && to[e] === steps[parent[c]!]) continue;
      steps[made] = to[e]!;
      parent[made] = c;
      made += 1;
    }
  }
  return layOut(graph, arrangeTree(graph, { sets, sizes, parent }), elimination.entries);
}

function layOut(graph: MoralGraph, arranged: ArrangedTree, cliqueEntries: number): CliqueTree {
  const { words, cardinalities } = graph;
  const n = cardinalities.length;
  const count = arranged.parent.length;
  // breadth first: the children of one clique are numbered in a row
  const head = new Int32Array(count).fill(-1);
  const link = new Int32Array(count);
  for (let c = count - 1; c > 0; c -= 1) {
    link[c] = head[arranged.parent[c]!]!;
    head[arranged.parent[c]!] = c;
  }
  const steps = new Int32Array(count);
  const parent = new Int32Array(count).fill(-1);
  const firstChild = new Int32Array(count + 1);
  for (let c = 0, made = 1; c < count; c += 1) {
    firstChild[c] = made;
    for (let d = head[steps[c]!]!; d >= 0; d = link[d]!) {
      steps[made] = d;
      parent[made] = c;
      made += 1;
    }
  }
  firstChild[count] = count;
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
