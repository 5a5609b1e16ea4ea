import * as z from 'zod/mini';
import { LARGEST_NUMBER } from '../validation/largestNumber.ts';
import type { Reading } from './reading.ts';

const id = z.string().check(z.regex(/^[A-Za-z0-9][A-Za-z0-9_-]*$/), z.maxLength(100));
const unit = z.string().check(z.minLength(1), z.maxLength(30));
const cylinder = z.int().check(z.gte(1), z.lte(16));
const cylinderKey = z.string().check(z.regex(/^([1-9]|1[0-6])$/));
const count = z.int().check(z.nonnegative(), z.maximum(LARGEST_NUMBER));
// one revolution is the least there is to count over
const exposure = z.strictObject({
  amount: z.number().check(z.gte(1), z.maximum(LARGEST_NUMBER)),
  unit: z.enum(['revolutions', 'firings']),
});
const countOfPart = z.strictObject({ suspect: count, partner: z.exactOptional(count), exposure });
const measured = z.number().check(z.gte(-LARGEST_NUMBER), z.maximum(LARGEST_NUMBER));
const byCylinder = z.record(cylinderKey, measured);

/** Shape of a reading. Whether it can be read on a test, its unit and its range are questions to the model, see `findReadingProblems`. */
export const readingSchema: z.ZodMiniType<Reading> = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('per-cylinder'),
    measure: id,
    values: byCylinder,
    unit,
    suspect: cylinder,
    temperatures: z.exactOptional(z.strictObject({ values: byCylinder, unit })),
    nominal: z.exactOptional(measured),
  }),
  z.strictObject({ kind: z.literal('single'), measure: id, value: measured, unit }),
  z.strictObject({ kind: z.literal('pair'), measure: id, value: measured, reference: measured, unit }),
  z.strictObject({ kind: z.literal('trim'), measure: id, short: measured, long: measured }),
  z.strictObject({
    kind: z.literal('counts'),
    measure: id,
    counts: z.record(cylinderKey, count),
    suspect: cylinder,
    exposure: z.exactOptional(exposure),
  }),
  z.strictObject({ kind: z.literal('part-counts'), measure: id, before: countOfPart, after: countOfPart }),
]);
