import { LARGEST_NUMBER } from '../validation/largestNumber.ts';
import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import type { EventCount } from './eventRate.ts';
import { regularizedBeta } from './regularizedBeta.ts';

const count = z.looseObject({
  events: optionSchemas.number(0, LARGEST_NUMBER),
  exposure: optionSchemas.number(Number.MIN_VALUE, LARGEST_NUMBER),
});
const argumentsSchema = z.strictObject({ first: count, second: count });

/** The exact conditional comparison of two event counts: the chance of at most this share of all events falling into the first exposure if
 * both rates were equal, P(X <= first) with X binomial. Small = the first rate is lower. 1 when nothing was counted at all.
 * @throws OptionError counts below 0, exposures that are not above 0
 * @example conditionalRateTest({ events: 2, exposure: 1000 }, { events: 9, exposure: 1000 }) // 0.0327
 * Source: Przyborowski & Wilenski 1940, Biometrika 31:313-323. */
export function conditionalRateTest(first: EventCount, second: EventCount): number {
  checkOptions(argumentsSchema, { first, second });
  if (second.events === 0) return 1;
  // P(X <= k | n, p) = I_{1-p}(n - k, k + 1), DLMF 8.17.5
  return regularizedBeta(second.exposure / (first.exposure + second.exposure), second.events, first.events + 1);
}
