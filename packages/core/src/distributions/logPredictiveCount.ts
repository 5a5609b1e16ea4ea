import type { EventCount, EventRate } from './eventRate.ts';
import { logNegativeBinomial } from './logNegativeBinomial.ts';

/** Natural log of the probability of a count when its rate is known only as a Gamma: a negative binomial. No event in t has
 * probability (b / (b + t))^a, the survival function of Lomax (1954, JASA 49:847-852).
 * Source: Gelman et al., Bayesian Data Analysis (3rd ed. 2013), 2.6. */
export function logPredictiveCount({ shape, exposure }: EventRate, count: EventCount): number {
  if (count.exposure === 0) return count.events === 0 ? 0 : -Infinity;
  return logNegativeBinomial(count.events, shape, exposure / (exposure + count.exposure));
}
