/** How many times as likely, with two significant digits, as in "8.4 times", "24 times", "more than 1000 times".
 * @param ratio at least 1; Infinity is allowed.
 * @example formatTimes(8.42) // '8.4 times' */
export function formatTimes(ratio: number): string {
  if (ratio > 1000) return 'more than 1000 times';
  return `${Number(ratio.toPrecision(2))} times`;
}
