import type { Dimension } from './dimension.ts';
import { unitsOf, type Unit } from './unitsOf.ts';

/** The unit of a dimension that a text means, or `undefined`. Letter case matters only where it must: mPa is no MPa. */
export function findUnit(dimension: Dimension, text: string): Unit | undefined {
  const wanted = text.trim();
  const units = unitsOf(dimension);
  const exact = units.find(({ symbol, also }) => symbol === wanted || also.includes(wanted));
  if (exact !== undefined || /^m(Pa|Ω)$/.test(wanted)) return exact;
  const lower = wanted.toLowerCase();
  return units.find(({ symbol, also }) => [symbol, ...also].some((spelling) => spelling.toLowerCase() === lower));
}

/** A value in the canonical unit of its dimension (the first of `unitsOf`). Conversions are exact by definition (NIST SP 811).
 * @example toCanonical(1, { symbol: 'bar', also: [], factor: 100 }) // 100, in kPa */
export function toCanonical(value: number, { factor, offset = 0 }: Unit): number {
  return value * factor + offset;
}
