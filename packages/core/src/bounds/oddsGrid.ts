/** Points on which the value of telling two configurations apart is kept: odds of the first to the second, evenly spaced in their
 * logarithm, so that every result shifts the whole grid by the same distance. */
export const GRID = 25;
const SPAN = 9;
/** Distance of two points, in natural logarithms of odds. */
export const SPACING: number = (2 * SPAN) / (GRID - 1);
/** Points kept on either side for shifts beyond the grid; a result that shifts further is taken to tell the two apart. */
export const MARGIN = 16;
const GROWTH = Math.exp(SPACING);

/** Odds at every point. */
export const ODDS: Float64Array = Float64Array.from({ length: GRID }, (_, g) => Math.exp(-SPAN + g * SPACING));

/** How a point at a distance (in points, whole and fraction) between two others is made of them: the weight of the upper one. Chords in
 * the odds, which lie below a concave value. */
export function upperWeight(fraction: number): number {
  return (Math.exp(fraction * SPACING) - 1) / (GROWTH - 1);
}

/** Position of odds on the grid, in points from the first; beyond the ends this is less than 0 or more than `GRID - 1`. */
export function gridPosition(logOdds: number): number {
  return (logOdds + SPAN) / SPACING;
}

/** Value at unnormalised probabilities of both, from the values at the points (per unit of the second). `logOdds` is that of the two.
 * Beyond the grid: what is left of an end once the rest is known for certain and worth nothing. */
export function interpolate(
  values: Float64Array,
  offset: number,
  first: number,
  second: number,
  logOdds: number,
): number {
  const position = gridPosition(logOdds);
  if (position < 0) return (first * values[offset]!) / ODDS[0]!;
  if (position >= GRID - 1) return second * values[offset + GRID - 1]!;
  const at = Math.floor(position);
  const upper = (first / (second * ODDS[at]!) - 1) / (GROWTH - 1);
  return second * ((1 - upper) * values[offset + at]! + upper * values[offset + at + 1]!);
}
