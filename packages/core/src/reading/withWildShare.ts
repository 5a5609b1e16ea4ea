/** Likelihoods mixed with a share of results that say nothing (written down wrongly, counters not cleared), scaled so that the largest
 * is 1. What contradicts a result then keeps at least about `share` divided by their number. */
export function withWildShare(likelihoods: readonly number[], share: number): number[] {
  const mean = likelihoods.reduce((sum, likelihood) => sum + likelihood, 0) / likelihoods.length;
  const mixed = likelihoods.map((likelihood) => (1 - share) * likelihood + share * mean);
  const largest = Math.max(...mixed);
  return mixed.map((likelihood) => likelihood / largest);
}
