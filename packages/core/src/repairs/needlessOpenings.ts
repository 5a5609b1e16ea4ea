/** What opening the engine counts for beyond its price where it proves needless: where no repair of the true cause needs it. Nobody is paid
 * it, so it stands beside prices, limits and what a case cost; whatever chooses a step counts it. */
export interface NeedlessOpenings {
  /** Access bits that count as opening the engine. */
  readonly opens: number;
  /** What each of them counts for, in the currency of the prices. */
  readonly amount: number;
  /** cause -> those of `opens` that some repair of it needs. */
  readonly neededBy: Int32Array;
}

/** How many of the accesses (bits) that a step opens count as opening the engine for nothing, if this is the cause. */
export function needlessIn({ opens, neededBy }: NeedlessOpenings, opened: number, cause: number): number {
  let count = 0;
  for (let rest = opened & opens & ~neededBy[cause]!; rest !== 0; rest &= rest - 1) count += 1;
  return count;
}

/** How many openings are needless on average, of the accesses (bits) that a step opens. Linear in the posterior. */
export function expectedNeedless(needless: NeedlessOpenings, opened: number, posterior: Float64Array): number {
  if ((opened & needless.opens) === 0) return 0;
  let mean = 0;
  for (let c = 0; c < posterior.length; c += 1) {
    if (posterior[c]! > 0) mean += posterior[c]! * needlessIn(needless, opened, c);
  }
  return mean;
}

/** What the accesses (bits) that a step opens count for beyond their price, on average. */
export function countedFor(needless: NeedlessOpenings, opened: number, posterior: Float64Array): number {
  return needless.amount === 0 ? 0 : needless.amount * expectedNeedless(needless, opened, posterior);
}
