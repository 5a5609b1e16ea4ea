import type { MoralGraph } from './moralGraph.ts';

/** Cliques as bit sets, with the sizes of their tables and the position of each one's parent (-1 for the root, which is first, and for
 * cliques that are no longer part of the tree). */
export interface ArrangedTree {
  readonly sets: Int32Array;
  readonly sizes: Float64Array;
  readonly parent: Int32Array;
}

/** What a clique costs besides its entries, in entries: messages, loops and look-ups, some 50 ns. */
const overhead = 32;

/** Entries of the joint table of all variables up to which it is the only table: see `propagateJoint`. */
export const smallJoint = 256;

/** Tables whose smallest number could be below this are not made by merging: products must not be lost to underflow. */
const tiny = 1e-250;

/** Makes a clique tree cheaper to propagate in. Every clique costs something whatever its size, and a message down costs a walk over the
 * parent's whole table, so
 * - a small clique is merged with its parent when that adds fewer entries than it saves in overhead;
 * - every clique is hung on the smallest clique that has its separator;
 * - children of one large clique whose separators together fill a much smaller table are hung on an extra clique of just these
 *   variables, so that the large table is walked once for all of them.
 * All keep the running intersection property: what a clique shares with any other part lies in its separator. */
export function arrangeTree(graph: MoralGraph, given: ArrangedTree): ArrangedTree {
  const { words, cardinalities, least } = graph;
  const count = given.parent.length;
  const sets = new Int32Array(2 * count * words);
  sets.set(given.sets);
  const sizes = new Float64Array(2 * count);
  sizes.set(given.sizes);
  const parent = new Int32Array(2 * count).fill(-1);
  parent.set(given.parent);
  const unionSize = (of: Int32Array, a: number, b: number): number => {
    let size = 1;
    let smallest = 1;
    for (let w = 0; w < words; w += 1) {
      for (let bits = of[a * words + w]! | of[b * words + w]!; bits !== 0; bits &= bits - 1) {
        const v = (w << 5) + 31 - Math.clz32(bits & -bits);
        size *= cardinalities[v]!;
        smallest *= least[v]!;
      }
    }
    return smallest < tiny ? Infinity : size;
  };
  const spared = cardinalities.reduce((all, states) => all * states, 1) > smallJoint ? overhead : smallJoint;
  // children come after their parents; a clique that was merged has infinite size
  for (let c = count - 1; c > 0; c -= 1) {
    const p = parent[c]!;
    const size = unionSize(sets, c, p);
    if (size > sizes[c]! + sizes[p]! + spared) continue;
    sizes[c] = Infinity;
    sizes[p] = size;
    for (let w = 0; w < words; w += 1) sets[p * words + w]! |= sets[c * words + w]!;
  }
  for (let c = 1; c < count; c += 1) if (sizes[parent[c]!] === Infinity) parent[c] = parent[parent[c]!]!;
  for (let c = 1; c < count; c += 1) if (sizes[c] === Infinity) parent[c] = -1;
  const shared = new Int32Array(2 * count * words); // separator towards the parent
  for (let c = 1; c < count; c += 1) {
    if (parent[c]! < 0) continue;
    const base = c * words;
    for (let w = 0; w < words; w += 1) shared[base + w] = sets[base + w]! & sets[parent[c]! * words + w]!;
    for (let x = 0; x < count; x += 1) {
      if (sizes[x]! >= sizes[parent[c]!]! || x === c) continue;
      let covers = true;
      for (let w = 0; w < words && covers; w += 1) covers = (shared[base + w]! & ~sets[x * words + w]!) === 0;
      if (!covers) continue;
      let above = x;
      while (above > 0 && above !== c) above = parent[above]!;
      if (above !== c) parent[c] = x;
    }
  }
  let made = count;
  for (let p = 0; p < count; p += 1) {
    if (sizes[p]! < 512) continue;
    const children: number[] = [];
    for (let c = 1; c < made; c += 1) if (parent[c] === p) children.push(c);
    while (children.length > 1 && made < 2 * count) {
      let [first, second, least] = [-1, -1, sizes[p]! / 3];
      for (let i = 1; i < children.length; i += 1) {
        for (let j = 0; j < i; j += 1) {
          const size = unionSize(shared, children[i]!, children[j]!);
          if (size < least) [first, second, least] = [j, i, size];
        }
      }
      if (first < 0) break;
      const [a, b] = [children[first]!, children[second]!];
      for (let w = 0; w < words; w += 1)
        sets[made * words + w] = shared[made * words + w] = shared[a * words + w]! | shared[b * words + w]!;
      sizes[made] = least;
      parent[made] = p;
      parent[a] = made;
      parent[b] = made;
      children.splice(second, 1);
      children[first] = made;
      made += 1;
    }
  }
  return { sets: sets.subarray(0, made * words), sizes: sizes.subarray(0, made), parent: parent.subarray(0, made) };
}
