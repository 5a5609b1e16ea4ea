import { LARGEST_NUMBER } from '../validation/largestNumber.ts';
import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import { betaQuantile } from './betaQuantile.ts';

const argumentsSchema = z.strictObject({ p: optionSchemas.number(0, 1), ess: optionSchemas.number(0, LARGEST_NUMBER) });

/** The 5-95 % interval of a probability of a row that is worth `ess` cases: quantiles of Beta(p ess, (1 - p) ess), the marginal of a
 * Dirichlet of that size. Computed, not elicited.
 * @throws OptionError
 * @example rangeOfProbability(0.05, 20) // [0.0027, 0.1459], to four decimals */
export function rangeOfProbability(p: number, ess: number): readonly [low: number, high: number] {
  checkOptions(argumentsSchema, { p, ess });
  if (!(ess > 0) || p <= 0 || p >= 1) return [p, p];
  return [betaQuantile(0.05, p * ess, (1 - p) * ess), betaQuantile(0.95, p * ess, (1 - p) * ess)];
}
