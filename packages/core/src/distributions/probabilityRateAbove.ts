import type { EventRate } from './eventRate.ts';
import { regularizedGamma } from './regularizedGamma.ts';

/** P(rate > `limit`), `limit` in events per unit of exposure. */
export function probabilityRateAbove({ shape, exposure }: EventRate, limit: number): number {
  return regularizedGamma(shape, limit * exposure).upper;
}
