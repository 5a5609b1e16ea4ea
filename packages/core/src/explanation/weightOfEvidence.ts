import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import type { NumberByCause } from './explanation.ts';

const byCause = z.record(z.string(), optionSchemas.number(0, 1));
const argumentsSchema = z.strictObject({ before: byCause, after: byCause });

/** Weight of evidence for each cause against all others together, in decibans: 10 log10 of the odds after over the odds before.
 * @param before cause -> probability, sums to 1; causes at 0 are left out. @param after the same after the evidence.
 * 0 when a cause was certain before (nothing is left to compare with), -Infinity when the evidence excludes it, Infinity when it
 * excludes all others. O(causes).
 * @throws OptionError numbers that are no probabilities
 * @example weightOfEvidence({ coil: 0.5, plug: 0.5 }, { coil: 0.9, plug: 0.1 }) // { coil: 9.5424, plug: -9.5424 }
 * Source: Good, Michie & Timms 1945, General Report on Tunny, section 21; Good 1950, Probability and the Weighing of Evidence. */
export function weightOfEvidence(before: NumberByCause, after: NumberByCause): NumberByCause {
  checkOptions(argumentsSchema, { before, after });
  const causes = Object.keys(before).filter((cause) => before[cause]! > 0);
  const othersBefore = sumsOfOthers(causes.map((cause) => before[cause]!));
  const othersAfter = sumsOfOthers(causes.map((cause) => after[cause] ?? 0));
  return Object.fromEntries(
    causes.map((cause, at) => {
      if (othersBefore[at] === 0) return [cause, 0];
      const oddsBefore = before[cause]! / othersBefore[at]!;
      return [cause, 10 * Math.log10((after[cause] ?? 0) / othersAfter[at]! / oddsBefore)];
    }),
  );
}

/** For each value the sum of all others. From both ends, not total - value: near 1 the subtraction loses the small ones. */
function sumsOfOthers(values: readonly number[]): number[] {
  const result = values.map(() => 0);
  let sum = 0;
  values.forEach((value, at) => {
    result[at]! += sum;
    sum += value;
  });
  sum = 0;
  for (let at = values.length - 1; at >= 0; at -= 1) {
    result[at]! += sum;
    sum += values[at]!;
  }
  return result;
}
