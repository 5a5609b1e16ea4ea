/** A number with all its digits and a decimal comma, as in "9,2". */
export function formatNumber(value: number): string {
  return String(value).replace('.', ',');
}
