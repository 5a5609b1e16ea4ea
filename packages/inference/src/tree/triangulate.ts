import { eliminationOrder, type EliminationOrder, type EliminationRule } from './eliminationOrder.ts';
import type { MoralGraph } from './moralGraph.ts';
import type { Random } from '../random/random.ts';

/** How long to search for a small tree. */
export interface TriangulationSearch {
  /** Most randomised orders to try. Default 24. */
  readonly restarts?: number;
  /** Graph operations to spend, per table entry of the best tree so far. Default one per 40 000 entries, at most 4: the larger the tables,
   * the more a smaller tree saves. */
  readonly share?: number;
  /** Makes randomised orders. Default a fixed seed: the same network gives the same tree. */
  readonly random?: Random;
}

/** The best elimination order found: by weighted fill first, then by fill and by weight, then randomised ones; each gives up as soon as
 * it is worse than the best so far. */
export function triangulate(graph: MoralGraph, random: Random, search: TriangulationSearch = {}): EliminationOrder {
  const restarts = search.restarts ?? 24;
  let best = eliminationOrder(graph, 'weighted-fill', null, 0, Infinity)!;
  let effort = best.effort;
  const consider = (rule: EliminationRule, chance: Random | null, blur: number): void => {
    const found = eliminationOrder(graph, rule, chance, blur, best.entries);
    effort += found?.effort ?? best.effort;
    if (found !== null && found.entries < best.entries) best = found;
  };
  for (
    let k = 0;
    k < restarts && effort < (search.share ?? Math.min(4, best.entries / 40_000)) * best.entries;
    k += 1
  ) {
    if (k === 0) consider('fill', null, 0);
    else consider(k % 3 === 0 ? 'fill' : k % 3 === 1 ? 'weighted-fill' : 'weight', random, k % 2 === 0 ? 0.5 : 2);
  }
  return best;
}
