import { describe, expect, test } from 'vitest';
import { createRandom, type Random } from '../random/random.ts';
import { eliminationOrder, type EliminationRule } from './eliminationOrder.ts';
import type { MoralGraph } from './moralGraph.ts';

type Edge = readonly [number, number];

function graphOf(cardinalities: readonly number[], edges: readonly Edge[]): Omit<MoralGraph, 'least'> {
  const words = (cardinalities.length + 31) >>> 5;
  const rows = new Int32Array(cardinalities.length * words);
  for (const [a, b] of edges) {
    rows[a * words + (b >>> 5)]! |= 1 << (b & 31);
    rows[b * words + (a >>> 5)]! |= 1 << (a & 31);
  }
  return { words, rows, cardinalities: Int32Array.from(cardinalities) };
}

const membersOf = (cliques: Int32Array, words: number, step: number, count: number): number[] =>
  Array.from({ length: count }, (_, v) => v).filter(
    (v) => ((cliques[step * words + (v >>> 5)]! >>> (v & 31)) & 1) === 1,
  );

// 0 - 1 - 2 - 3 - 0: whichever goes first joins its two neighbours
const ring = graphOf(
  [2, 7, 3, 5],
  [
    [0, 1],
    [1, 2],
    [2, 3],
    [3, 0],
  ],
);
const eliminate = (rule: EliminationRule, limit = Infinity) => eliminationOrder(ring, rule, null, 0, limit);

describe('a ring of four with 2, 7, 3 and 5 states', () => {
  test('by fill every one adds one edge, so the first goes first', () => {
    // {0,1,3}: 2 * 7 * 5; then {1,2,3}: 7 * 3 * 5, what is left of it is {2,3} and {3}
    expect(eliminate('fill')).toMatchObject({
      order: Int32Array.of(0, 1, 2, 3),
      tables: Float64Array.of(70, 105, 15, 5),
      next: Int32Array.of(1, 2, 3, 4),
      within: Int32Array.of(0, 1, 1, 1),
      entries: 70 + 105,
    });
  });

  test('by weighted fill the edge of the fewest states is added: 2 * 3 between the neighbours of the second', () => {
    expect(eliminate('weighted-fill')).toMatchObject({
      order: Int32Array.of(1, 0, 2, 3),
      tables: Float64Array.of(42, 30, 15, 5),
      entries: 42 + 30,
    });
  });

  test('by weight the smallest table is made first: 5 * 2 * 3 of the fourth', () => {
    expect(eliminate('weight')).toMatchObject({
      order: Int32Array.of(3, 0, 1, 2),
      tables: Float64Array.of(30, 42, 21, 3),
      within: Int32Array.of(0, 1, 1, 1),
      entries: 30 + 42,
    });
  });

  test('it gives up once all tables made exceed the limit twice', () => {
    // 70 + 105 + 15 + 5 = 195
    expect(eliminate('fill', 97)).toBeNull();
    expect(eliminate('fill', 97.5)).not.toBeNull();
  });

  test('effort is the neighbours looked at, the candidates compared and the members of the cliques', () => {
    // first step: 4 scores of 2 neighbours, 4 candidates, clique of 3; all three left have new scores: 6, 3, 3; then 2, 2, 2; 0, 1, 1
    expect(eliminate('fill')!.effort).toBe(8 + 4 + 3 + (6 + 3 + 3) + (2 + 2 + 2) + (0 + 1 + 1));
  });

  test('what is to stay is in the cliques but has no step', () => {
    const found = eliminationOrder(ring, 'fill', null, 0, Infinity, Uint8Array.of(0, 1, 0, 0))!;
    // {0,1,3}, {1,2,3}; {1,3} is what is left of the first of them to be followed by it
    expect(found).toMatchObject({
      order: Int32Array.of(0, 2, 3),
      next: Int32Array.of(2, 2, 4),
      entries: 70 + 105,
    });
    expect([...found.within.subarray(0, 3)]).toEqual([0, 1, 0]);
    expect(found.tables.subarray(0, 3)).toEqual(Float64Array.of(70, 105, 35));
  });

  test('ties are broken by chance when there is one: the k-th of equals is taken with chance 1/k', () => {
    const firstBy = (chances: readonly number[], blur = 0) => {
      let at = 0;
      const random: Random = () => chances[at++ % chances.length]!;
      return eliminationOrder(ring, 'fill', random, blur, Infinity)!.order[0];
    };
    expect(firstBy([0])).toBe(3);
    expect(firstBy([0.99])).toBe(0);
    expect(firstBy([0.4])).toBe(1); // 0.4 * 2 < 1, but 0.4 * 3 and 0.4 * 4 are not
    // scores 1 + 0.5 * 0.9, 0.5, 0.1, 0.7: no tie is left
    expect(firstBy([0.9, 0.5, 0.1, 0.7], 0.5)).toBe(2);
  });
});

/** The same by sets, every score anew at every step. */
function bySets(cardinalities: readonly number[], edges: readonly Edge[], rule: EliminationRule) {
  const neighbours = cardinalities.map(() => new Set<number>());
  const join = (a: number, b: number): void => {
    neighbours[a]!.add(b);
    neighbours[b]!.add(a);
  };
  for (const [a, b] of edges) join(a, b);
  const left = new Set(cardinalities.keys());
  const cliques: number[][] = [];
  const order: number[] = [];
  const pairs = (of: Set<number>): Edge[] =>
    [...of].flatMap((a) => [...of].flatMap((b): Edge[] => (a < b ? [[a, b]] : [])));
  const scoreOf = (v: number): number => {
    const missing = pairs(neighbours[v]!).filter(([a, b]) => !neighbours[a]!.has(b));
    if (rule === 'fill') return missing.length;
    if (rule === 'weight') return [...neighbours[v]!, v].reduce((size, u) => size * cardinalities[u]!, 1);
    return missing.reduce((sum, [a, b]) => sum + cardinalities[a]! * cardinalities[b]!, 0);
  };
  while (left.size > 0) {
    const best = [...left].reduce((a, b) => (scoreOf(b) < scoreOf(a) ? b : a));
    order.push(best);
    cliques.push([...neighbours[best]!, best].sort((a, b) => a - b));
    for (const [a, b] of pairs(neighbours[best]!)) join(a, b);
    for (const u of neighbours[best]!) neighbours[u]!.delete(best);
    left.delete(best);
  }
  const isPart = (a: number[], b: number[]): boolean => a.every((v) => b.includes(v));
  const isMaximal = cliques.map((own, k) => !cliques.some((other, j) => j !== k && isPart(own, other)));
  return { order, cliques, isMaximal };
}

test.each(['fill', 'weighted-fill', 'weight'] as const)('by %s it does what sets and scores made anew do', (rule) => {
  const random = createRandom(5);
  const below = (n: number): number => Math.floor(random() * n);
  for (const count of [1, 2, 6, 9, 31, 32, 33, 40, 66]) {
    const cardinalities = Array.from({ length: count }, () => 2 + below(4));
    const edges = Array.from({ length: Math.floor(1.4 * count) }, (): Edge => [below(count), below(count)]).filter(
      ([a, b]) => a !== b,
    );
    const graph = graphOf(cardinalities, edges);
    const before = graph.rows.slice();
    const found = eliminationOrder(graph, rule, null, 0, Infinity)!;
    const expected = bySets(cardinalities, edges, rule);
    expect(graph.rows, 'the graph stays as it was').toEqual(before);
    expect([...found.order]).toEqual(expected.order);
    const cliques = expected.order.map((_, step) => membersOf(found.cliques, graph.words, step, count));
    expect(cliques).toEqual(expected.cliques);
    const sizes = cliques.map((clique) => clique.reduce((size, v) => size * cardinalities[v]!, 1));
    expect([...found.tables]).toEqual(sizes);
    const stepOf = (v: number): number => expected.order.indexOf(v);
    cliques.forEach((clique, step) => {
      const others = clique.map(stepOf).filter((other) => other !== step);
      expect(found.next[step]).toBe(Math.min(count, ...others));
      const whole = found.within[step]!;
      expect(whole === step).toBe(expected.isMaximal[step]);
      expect(cliques[whole]).toEqual(expect.arrayContaining(clique));
      expect(found.within[whole]).toBe(whole);
    });
    expect(found.entries).toBe(sizes.reduce((sum, size, step) => (expected.isMaximal[step] ? sum + size : sum), 0));
  }
});
