import { logGamma } from './logGamma.ts';

/** Natural log of the Poisson probability of `count` events at `mean` >= 0. In logs, since jstat's `poisson.pdf` is Infinity or NaN from
 * 144 events on. NIST/SEMATECH e-Handbook 1.3.6.6.19. */
export function logPoisson(count: number, mean: number): number {
  if (mean === 0) return count === 0 ? 0 : -Infinity;
  return count * Math.log(mean) - mean - logGamma(count + 1);
}
