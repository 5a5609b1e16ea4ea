import * as z from 'zod/mini';
import { LARGEST_NUMBER } from '../validation/largestNumber.ts';
import type { Prices } from './circumstances.ts';

/** Shape of prices, in a case and in circumstances alike. */
export const pricesSchema: z.ZodMiniType<Prices> = z.strictObject({
  currency: z.string().check(z.minLength(1), z.maxLength(20)),
  labourPerHour: z.number().check(z.nonnegative(), z.maximum(LARGEST_NUMBER)),
  partsFactor: z.number().check(z.positive(), z.maximum(LARGEST_NUMBER)),
  needlessOpening: z.exactOptional(z.number().check(z.nonnegative(), z.maximum(LARGEST_NUMBER))),
});
