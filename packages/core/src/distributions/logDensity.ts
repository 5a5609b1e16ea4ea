import { logGamma } from './logGamma.ts';
import { normalCdf } from './normalCdf.ts';
import { regularizedGamma } from './regularizedGamma.ts';

/** A distribution of a reading. `mean` and `sd` are those of the reading itself, also for the lognormal; `shape` is the gamma's. */
export type Distribution =
  | { readonly family: 'normal'; readonly mean: number; readonly sd: number }
  | { readonly family: 'lognormal'; readonly mean: number; readonly sd: number }
  | { readonly family: 'gamma'; readonly mean: number; readonly shape: number };

/** Natural log of the density at `x` of a distribution cut off outside [low, high], in logs throughout so that far tails stay finite.
 * Densities: NIST/SEMATECH e-Handbook 1.3.6.6.1 (normal), .9 (lognormal), .11 (gamma). `-Infinity` outside the support. */
export function logDensity(distribution: Distribution, x: number, low: number, high: number): number {
  if (x < low || x > high) return -Infinity;
  const inside = distributionFunction(distribution, high) - distributionFunction(distribution, low);
  return logUncut(distribution, x) - Math.log(inside);
}

/** P(X <= x) of a distribution that is not cut off. */
export function distributionFunction(distribution: Distribution, x: number): number {
  const { family, mean } = distribution;
  if (family === 'normal') return normalCdf((x - mean) / distribution.sd);
  if (x <= 0) return 0;
  if (family === 'gamma') return regularizedGamma(distribution.shape, (x * distribution.shape) / mean).lower;
  const { location, scale } = logarithmOf(distribution);
  return normalCdf((Math.log(x) - location) / scale);
}

function logUncut(distribution: Distribution, x: number): number {
  const { family, mean } = distribution;
  if (family === 'normal') return logNormal(x, mean, distribution.sd);
  if (x <= 0) return -Infinity;
  if (family === 'gamma') {
    const { shape } = distribution;
    const rate = shape / mean;
    return shape * Math.log(rate) + (shape - 1) * Math.log(x) - rate * x - logGamma(shape);
  }
  const { location, scale } = logarithmOf(distribution);
  return logNormal(Math.log(x), location, scale) - Math.log(x);
}

function logNormal(x: number, mean: number, sd: number): number {
  const z = (x - mean) / sd;
  return -0.5 * z * z - Math.log(sd) - 0.5 * Math.log(2 * Math.PI);
}

/** Mean and standard deviation of the logarithm, from those of the value. */
function logarithmOf({ mean, sd }: { readonly mean: number; readonly sd: number }): {
  location: number;
  scale: number;
} {
  const variance = Math.log1p((sd / mean) ** 2);
  return { location: Math.log(mean) - variance / 2, scale: Math.sqrt(variance) };
}
