/** A test that could come next, in amounts of money. */
export interface Contender {
  /** What knowing the result saves, before any price. */
  readonly grossValue: number;
  /** What is left of that after all it costs: price, a second run where the fault sleeps, what has to be opened again. */
  readonly netValue: number;
}

/** The test to begin with, among those that are about as good as the best: what saves most for what it costs. So a quick look is not pushed
 * behind a dear test for a few units. @returns its index; -1 when
 * none saves more than it costs.
 *
 * Whoever begins with a test instead of the best one loses at most what it costs, for what it tells is kept: so a cheap test that pays is always
 * about the same. Order by value over cost: as probability over cost in a sequence (Kadane & Simon 1977, Annals of Statistics 5(2):237-255); a
 * rule of order among equals, not an optimum.
 * @param contenders best first by `netValue` @param expectedCost what the whole case costs on the average
 * @param aboutTheSame share of that inside which two first steps are about the same */
export function firstAmongEquals(contenders: readonly Contender[], expectedCost: number, aboutTheSame: number): number {
  const [best] = contenders;
  // a free test that tells nothing is worth 0 up to rounding, and must not be proposed for it
  const least = 1e-9 * expectedCost;
  if (best === undefined || best.netValue <= least) return -1;
  const equals = contenders.flatMap((one, at) =>
    one.netValue > least && costsMore(one, best) <= Math.max(least, aboutTheSame * expectedCost) ? [{ one, at }] : [],
  );
  return equals.reduce((a, b) => (valueOverCost(b.one) > valueOverCost(a.one) ? b : a)).at;
}

/** What beginning with a test costs more than beginning with the best, at most. */
export function costsMore(one: Pick<Contender, 'grossValue' | 'netValue'>, best: Pick<Contender, 'netValue'>): number {
  return Math.max(0, Math.min(best.netValue - one.netValue, one.grossValue - one.netValue));
}

function valueOverCost({ grossValue, netValue }: Contender): number {
  return grossValue / Math.max(grossValue - netValue, Number.MIN_VALUE);
}
