/** What is known of a rate of events, as a Gamma distribution: `shape` is worth that many events seen in `exposure`; mean = shape / exposure. */
export interface EventRate {
  readonly shape: number;
  /** Any unit, the same throughout: firings, revolutions, minutes, kilometres. */
  readonly exposure: number;
}

/** Events seen in an exposure. */
export interface EventCount {
  readonly events: number;
  /** In the unit of the rate, >= 0. */
  readonly exposure: number;
}

/** A rate with a mean (per unit of exposure) and a shape: the smaller the shape, the less is known. */
export function eventRate(mean: number, shape: number): EventRate {
  return { shape, exposure: shape / mean };
}

/** The rate after a count: Gamma(a, b) becomes Gamma(a + events, b + exposure).
 * Source: conjugacy of Gamma and Poisson; Gelman et al., Bayesian Data Analysis (3rd ed. 2013), 2.6; NIST/SEMATECH 8.4.6. */
export function updateEventRate(rate: EventRate, { events, exposure }: EventCount): EventRate {
  return { shape: rate.shape + events, exposure: rate.exposure + exposure };
}
