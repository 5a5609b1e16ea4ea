import { randomGamma } from 'd3-random';
import type { Random } from './random.ts';

// No draw makes anything impossible: far below any probability a person would write down.
const FLOOR = 1e-12;

/** A distribution drawn from the Dirichlet of mean `p` worth `ess` cases: Gamma(p ess, 1) for each state, normalised.
 * With `ess` 0 the row is certain and returned as it is.
 * Source: Devroye 1986, Non-Uniform Random Variate Generation, ch. XI.4; gammas by Marsaglia & Tsang 2000 (d3-random). */
export function drawDirichlet(
  p: Readonly<Record<string, number>>,
  ess: number,
  random: Random,
): Readonly<Record<string, number>> {
  if (!(ess > 0)) return p;
  const gamma = randomGamma.source(random);
  const drawn = Object.entries(p).map(([state, mean]): [string, number] => [state, gamma(mean * ess, 1)()]);
  const sum = drawn.reduce((total, [, x]) => total + x, 0);
  if (!(sum > 0)) return p; // every gamma underflowed: a size so small that nothing is known
  const lifted = drawn.map(([state, x]): [string, number] => [state, Math.max(FLOOR, x / sum)]);
  const total = lifted.reduce((all, [, x]) => all + x, 0);
  return Object.fromEntries(lifted.map(([state, x]) => [state, x / total]));
}
