/** The index at which the running sum of weights first exceeds `uniform` (in [0, 1)) times their total. Weights are not negative and not
 * all zero; one of weight zero is never drawn. `from` and `count` choose a stretch of the array; the index is counted from `from`. */
export function drawIndex(weights: Float64Array, uniform: number, from = 0, count: number = weights.length): number {
  let total = 0;
  for (let at = 0; at < count; at += 1) total += weights[from + at]!;
  let rest = uniform * total;
  let last = 0;
  for (let at = 0; at < count; at += 1) {
    const weight = weights[from + at]!;
    if (weight > 0) last = at;
    rest -= weight;
    if (rest < 0) return at;
  }
  return last;
}
