import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { LARGEST_NUMBER } from '../validation/largestNumber.ts';
import { checkReading } from '../reading/checkReading.ts';

// Share of the current driving cycle in the stored average: SAE J1979 / ISO 15031-5, service $06, test id $0B.
const CURRENT = 0.1;

const count = optionSchemas.number(0, LARGEST_NUMBER);
const argumentsSchema = z.strictObject({ counts: z.array(count), before: count });

/** The average that a control module stores over driving cycles (test $0B): a tenth of the counts of the cycle and nine tenths of the
 * average before. After ten cycles a new level is in to 65 % only; ten clean cycles leave 35 % of the old one.
 * @param counts of each driving cycle, in order. @param before the average before them. Default 0.
 * @throws ReadingError
 * @example storedAverage([50, 50]) // 9.5 */
export function storedAverage(counts: readonly number[], before = 0): number {
  checkReading(argumentsSchema, { counts, before });
  return counts.reduce((average, count) => CURRENT * count + (1 - CURRENT) * average, before);
}
