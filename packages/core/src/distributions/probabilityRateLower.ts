import type { EventRate } from './eventRate.ts';
import { regularizedBeta } from './regularizedBeta.ts';

/** P(first rate < second rate) for two independent Gamma rates in the same unit: the share X / (X + Y) of two standard Gammas is a Beta
 * (NIST DLMF 5.12.1 behind it), so the answer is one incomplete beta function. */
export function probabilityRateLower(first: EventRate, second: EventRate): number {
  return regularizedBeta(first.exposure / (first.exposure + second.exposure), first.shape, second.shape);
}
