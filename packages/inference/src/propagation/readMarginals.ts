import type { Propagation } from './propagation.ts';
import { sumNest } from './sumNest.ts';

/** Reads the marginals of the variables from `first` up to, not including, `end` out of the tables that evidence was distributed to.
 * Allocates nothing. */
export function readMarginals(propagation: Propagation, first: number, end: number): void {
  const { compiled, states, active, marginals, summaries, collected, beliefs, collectedFrom, separatorFrom } =
    propagation;
  const { readIn, changedIn } = propagation;
  const { round } = propagation.now;
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
    const source = loops.source[v]!;
    const c = source < 0 ? ~source : source;
    if (changedIn[c]! <= readIn[v]!) continue;
    readIn[v] = round;
    const nest = 2 * tree.count + v;
    let table = summaries;
    let from = summaryAt[c]!;
    if (source >= 0) {
      const kind = separatorFrom[c]!;
      table = kind === 0 ? prior : kind === 1 ? collected : beliefs;
      from = separatorAt[c]!;
    } else if (c === 0) {
      table = collectedFrom[0] === 1 ? collected : prior;
      from = tableAt[0]!;
    }
    sumNest(propagation, nest, table, from, marginals, at, to);
    let sum = 0;
    for (let k = at; k < to; k += 1) sum += marginals[k]!;
    for (let k = at; k < to; k += 1) marginals[k]! /= sum;
  }
}
