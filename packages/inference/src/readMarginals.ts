import type { Propagation } from './propagation.ts';
import { sumNest } from './sumNest.ts';

/** Reads the marginals of the variables from `first` up to, not including, `end` out of the tables that evidence was distributed to.
 * Allocates nothing. */
export function readMarginals(propagation: Propagation, first: number, end: number): void {
  const { compiled, states, active, marginals, summaries, collected, beliefs, beliefFrom, separatorFrom } = propagation;
  const { tree, loops, prior, marginAt, tableAt, separatorAt, summaryAt, priorMarginals } = compiled;
  for (let v = first; v < end; v += 1) {
    const at = marginAt[v]!;
    const to = marginAt[v + 1]!;
    if (active[v] === 0) {
      const state = states[v]!;
      if (state < 0) for (let k = at; k < to; k += 1) marginals[k] = priorMarginals[k]!;
      else {
        for (let k = at; k < to; k += 1) marginals[k] = 0;
        marginals[at + state] = 1;
      }
      continue;
    }
    const nest = 2 * tree.count + v;
    const source = loops.source[v]!;
    let table = summaries;
    let from = 0;
    if (source < -1) from = summaryAt[-1 - source]!;
    else {
      const kind = source < 0 ? beliefFrom[0]! : separatorFrom[source]!;
      table = kind === 0 ? prior : kind === 1 ? collected : beliefs;
      from = source < 0 ? tableAt[0]! : separatorAt[source]!;
    }
    sumNest(propagation, nest, table, from, marginals, at, to);
    let sum = 0;
    for (let k = at; k < to; k += 1) sum += marginals[k]!;
    for (let k = at; k < to; k += 1) marginals[k]! /= sum;
  }
}
