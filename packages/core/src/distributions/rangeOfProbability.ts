import { betaQuantile } from './betaQuantile.ts';

/** The 5-95 % interval of a probability of a row that is worth `ess` cases: quantiles of Beta(p ess, (1 - p) ess), the marginal of a
 * Dirichlet of that size. Computed, not elicited.
 * @example rangeOfProbability(0.05, 20) // [0.0027, 0.1459], to four decimals */
export function rangeOfProbability(p: number, ess: number): readonly [low: number, high: number] {
  if (!(ess > 0) || p <= 0 || p >= 1) return [p, p];
  return [betaQuantile(0.05, p * ess, (1 - p) * ess), betaQuantile(0.95, p * ess, (1 - p) * ess)];
}
