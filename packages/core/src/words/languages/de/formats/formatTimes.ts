import { formatNumber } from './formatNumber.ts';

/** How many times as likely, with two significant digits, as in "8,4-mal", "24-mal", "mehr als 1000-mal".
 * @param ratio at least 1; Infinity is allowed.
 * @example formatTimes(8.42) // '8,4-mal' */
export function formatTimes(ratio: number): string {
  if (ratio > 1000) return 'mehr als 1000-mal';
  return `${formatNumber(Number(ratio.toPrecision(2)))}-mal`;
}
