import { eventRate, type EventRate } from '../distributions/eventRate.ts';
import type { RateDistribution } from '../model/readingModel.ts';

/** A rate of misfires per firing, from one per 1000 firings. */
export function ratePerFiring({ mean, shape }: RateDistribution): EventRate {
  return eventRate(mean / 1000, shape);
}
