/** The mean, over the outcomes of a test, of what is left then. Outcomes that cannot happen are passed over.
 * @param table P(outcome | cause) at [cause * outcomes + outcome]. @param after what is left, given P(cause | outcome) and the outcome */
export function expectedOverOutcomes(
  posterior: Float64Array,
  table: Float64Array,
  after: (posterior: Float64Array, outcome: number) => number,
): number {
  const outcomes = table.length / posterior.length;
  let mean = 0;
  for (let o = 0; o < outcomes; o += 1) {
    const joint = posterior.map((p, c) => p * table[c * outcomes + o]!);
    const chance = joint.reduce((sum, p) => sum + p, 0);
    if (chance > 0)
      mean +=
        chance *
        after(
          joint.map((p) => p / chance),
          o,
        );
  }
  return mean;
}
