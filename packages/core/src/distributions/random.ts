import { randomLcg } from 'd3-random';

/** A source of chance: uniform on [0, 1). Injected wherever something is drawn. */
export type Random = () => number;

/** A generator that repeats itself for the same seed (any finite number): print the seed with what it made.
 * Source: linear congruential generator of d3-random, after Press et al., Numerical Recipes. */
export function seededRandom(seed: number): Random {
  return randomLcg(seed);
}
