import { describe, expect, test } from 'vitest';
import { createRandom } from '../random/random.ts';
import { cliqueTree, type CliqueTree } from './cliqueTree.ts';
import { eliminationOrder } from './eliminationOrder.ts';
import type { MoralGraph } from './moralGraph.ts';

type Edge = readonly [number, number];

function graphOf(cardinalities: readonly number[], edges: readonly Edge[]): MoralGraph {
  const count = cardinalities.length;
  const words = (count + 31) >>> 5;
  const rows = new Int32Array(count * words);
  for (const [a, b] of edges) {
    rows[a * words + (b >>> 5)]! |= 1 << (b & 31);
    rows[b * words + (a >>> 5)]! |= 1 << (a & 31);
  }
  return { words, rows, cardinalities: Int32Array.from(cardinalities), least: new Float64Array(count).fill(0.1) };
}

const treeOf = (cardinalities: readonly number[], edges: readonly Edge[]): CliqueTree => {
  const graph = graphOf(cardinalities, edges);
  return cliqueTree(graph, eliminationOrder(graph, 'fill', null, 0, Infinity)!);
};
const membersOf = ({ start, members }: CliqueTree, c: number): number[] => [
  ...members.subarray(start[c], start[c + 1]),
];

describe('a chain of four with ten states each', () => {
  // three cliques of 100; two of them merged would have 1000
  const chain: readonly Edge[] = [
    [0, 1],
    [1, 2],
    [2, 3],
  ];

  test('each clique has its own variable slowest and the one it shares with its parent fastest', () => {
    expect(treeOf([10, 10, 10, 10], chain)).toEqual({
      count: 3,
      cliqueEntries: 300,
      parent: Int32Array.of(-1, 0, 1),
      start: Int32Array.of(0, 2, 4, 6),
      members: Int32Array.of(0, 1, 2, 1, 3, 2),
      residuals: Int32Array.of(2, 1, 1),
      sizes: Float64Array.of(100, 100, 100),
      separatorSizes: Float64Array.of(1, 10, 10),
      home: Int32Array.of(0, 0, 1, 2),
      cliqueStart: Int32Array.of(0, 1, 3, 5, 6),
      cliquesOf: Int32Array.of(0, 0, 1, 1, 2, 2),
      firstChild: Int32Array.of(1, 2, 3, 3),
    });
  });

  test('the largest clique is the root, and the path above it is turned round', () => {
    // 10 * 11 in the middle
    const tree = treeOf([10, 10, 11, 10], chain);
    expect([...tree.parent]).toEqual([-1, 0, 0]);
    expect(membersOf(tree, 0).toSorted()).toEqual([1, 2]);
    expect([...tree.sizes]).toEqual([110, 100, 110]);
    expect([1, 2].map((c) => membersOf(tree, c))).toEqual([
      [0, 1],
      [3, 2],
    ]);
    // at the other end: 10 * 12
    const last = treeOf([10, 10, 10, 12], chain);
    expect(membersOf(last, 0)).toEqual([3, 2]);
    expect([...last.parent]).toEqual([-1, 0, 1]);
    expect(membersOf(last, 2)).toEqual([0, 1]);
  });
});

test('parts that are not connected hang together by empty separators', () => {
  const tree = treeOf(
    [20, 20, 30, 30, 20, 20],
    [
      [0, 1],
      [2, 3],
      [4, 5],
    ],
  );
  expect(membersOf(tree, 0)).toEqual([2, 3]);
  expect([...tree.separatorSizes]).toEqual([1, 1, 1]);
  expect([...tree.residuals]).toEqual([2, 2, 2]);
  expect([...tree.sizes]).toEqual([900, 400, 400]);
  // an empty separator is in every clique: the smallest has the last
  expect([...tree.parent]).toEqual([-1, 0, 1]);
  expect([...tree.firstChild]).toEqual([1, 2, 3, 3]);
});

test('variables whose joint table is small are one clique', () => {
  const tree = treeOf(
    [2, 3, 2],
    [
      [0, 1],
      [1, 2],
    ],
  );
  expect(tree.count).toBe(1);
  expect([...tree.sizes]).toEqual([12]);
  expect(tree.cliqueEntries).toBe(2 * 3 + 3 * 2);
});

test('every family is in a clique, what cliques share lies on the path between them, separators lie as in the parent', () => {
  const random = createRandom(8);
  const below = (n: number): number => Math.floor(random() * n);
  for (const count of [2, 5, 9, 14, 31, 33, 40]) {
    const cardinalities = Array.from({ length: count }, () => 2 + below(9));
    const edges = Array.from({ length: Math.floor(1.2 * count) }, (): Edge => [below(count), below(count)]).filter(
      ([a, b]) => a !== b,
    );
    const graph = graphOf(cardinalities, edges);
    const elimination = eliminationOrder(graph, 'weighted-fill', null, 0, Infinity)!;
    const tree = cliqueTree(graph, elimination);
    const cliques = Array.from({ length: tree.count }, (_, c) => membersOf(tree, c));
    const sizeOf = (list: readonly number[]): number => list.reduce((size, v) => size * cardinalities[v]!, 1);
    expect(tree.cliqueEntries).toBe(elimination.entries);
    for (const [a, b] of edges) expect(cliques.some((list) => list.includes(a) && list.includes(b))).toBe(true);
    for (let v = 0; v < count; v += 1) {
      const having = [...cliques.keys()].filter((c) => cliques[c]!.includes(v));
      expect([...tree.cliquesOf.subarray(tree.cliqueStart[v], tree.cliqueStart[v + 1])]).toEqual(having);
      expect(tree.home[v]).toBe(having[0]);
      // connected: all but the first have a parent that has it too
      for (const c of having.slice(1)) expect(cliques[tree.parent[c]!]).toContain(v);
    }
    cliques.forEach((list, c) => {
      expect(tree.sizes[c]).toBe(sizeOf(list));
      const isOwn = list.map((v) => tree.home[v] === c);
      expect(isOwn).toEqual(list.map((_, k) => k < tree.residuals[c]!));
      const separator = list.slice(tree.residuals[c]);
      expect(tree.separatorSizes[c]).toBe(sizeOf(separator));
      if (c === 0) {
        expect(tree.parent[0]).toBe(-1);
        return;
      }
      const above = cliques[tree.parent[c]!]!;
      expect(tree.parent[c]).toBeLessThan(c);
      expect(separator).toEqual(above.filter((v) => separator.includes(v)));
    });
    for (let p = 0; p < tree.count; p += 1) {
      const children = [...cliques.keys()].filter((c) => tree.parent[c] === p);
      const [from, to] = [tree.firstChild[p]!, tree.firstChild[p + 1]!];
      expect(children).toEqual(Array.from({ length: to - from }, (_, k) => from + k));
    }
  }
});
