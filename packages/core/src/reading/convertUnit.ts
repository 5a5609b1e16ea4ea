import { checkReading } from './checkReading.ts';
import * as z from 'zod/mini';
import { ReadingError } from '../errors/readingError.ts';
import type { Dimension } from '../units/dimension.ts';
import { findUnit, toCanonical } from '../units/toCanonical.ts';
import { unitProblem } from './unitProblem.ts';

const valueSchema = z.strictObject({ value: z.number() });

/** A value in another unit of the same dimension, exact by definition (NIST SP 811).
 * @throws ReadingError `unit-unknown`, a value that is no number
 * @example convertUnit('pressure', 150, 'psi', 'bar') // 10.34 */
export function convertUnit(dimension: Dimension, value: number, from: string, to: string): number {
  checkReading(valueSchema, { value });
  const [source, target] = [findUnit(dimension, from), findUnit(dimension, to)];
  if (source === undefined) throw new ReadingError([unitProblem(dimension, from, '/from')]);
  if (target === undefined) throw new ReadingError([unitProblem(dimension, to, '/to')]);
  return (toCanonical(value, source) - (target.offset ?? 0)) / target.factor;
}
