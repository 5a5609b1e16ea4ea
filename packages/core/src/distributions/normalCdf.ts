import { regularizedGamma } from './regularizedGamma.ts';

/** Distribution function of the standard normal, tails included: the smaller tail is half of Q(1/2, z²/2) (DLMF 7.11.2).
 * jstat's `normal.cdf` has no tail below -6. */
export function normalCdf(z: number): number {
  const tail = 0.5 * regularizedGamma(0.5, (z * z) / 2).upper;
  return z < 0 ? tail : 1 - tail;
}
