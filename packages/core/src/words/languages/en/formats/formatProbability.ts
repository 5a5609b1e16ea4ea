/** A probability with two significant digits, as in "24%", "3.1%", "99.6%". Never "0%" or "100%": beyond 1 in 1000 on either side it
 * says so in words.
 * @example
 * ```ts
 * formatProbability(0.0312) // '3.1%'
 * formatProbability(1) // 'more than 999 in 1000'
 * ``` */
export function formatProbability(probability: number): string {
  if (probability < 0.001) return 'fewer than 1 in 1000';
  if (probability > 0.999) return 'more than 999 in 1000';
  const percent = probability * 100;
  // near certainty the digits that tell are those of what is missing
  return percent >= 99 ? `${percent.toFixed(1)}%` : `${Number(percent.toPrecision(2))}%`;
}
