/** Mutual information between cause and outcome, in bits: how much one result is expected to tell.
 * @param posterior P(cause). @param outcomeGivenCause at [cause * outcomes + outcome]. @param predictive P(outcome).
 * Source: Shannon 1948; expected entropy as a measure of tests: de Kleer & Williams 1987, Artificial Intelligence 32:97-130. */
export function informationGain(
  posterior: Float64Array,
  outcomeGivenCause: Float64Array,
  predictive: Float64Array,
): number {
  const outcomes = predictive.length;
  let bits = 0;
  for (let c = 0; c < posterior.length; c += 1) {
    if (posterior[c]! === 0) continue;
    for (let o = 0; o < outcomes; o += 1) {
      const p = outcomeGivenCause[c * outcomes + o]!;
      if (p > 0) bits += posterior[c]! * p * Math.log2(p / predictive[o]!);
    }
  }
  // rounding can leave a hair below zero for a test that tells nothing
  return Math.max(0, bits);
}
