import * as z from 'zod/mini';
import type { Reading } from './reading.ts';

const id = z.string().check(z.regex(/^[A-Za-z0-9][A-Za-z0-9_-]*$/), z.maxLength(100));
const unit = z.string().check(z.minLength(1), z.maxLength(30));
const cylinder = z.int().check(z.gte(1), z.lte(16));
const cylinderKey = z.string().check(z.regex(/^([1-9]|1[0-6])$/));
const count = z.int().check(z.nonnegative());
const exposure = z.strictObject({ amount: z.number().check(z.positive()), unit: z.enum(['revolutions', 'firings']) });
const countOfPart = z.strictObject({ suspect: count, partner: z.exactOptional(count), exposure });
const byCylinder = z.record(cylinderKey, z.number());

/** Shape of a reading. Whether it can be read on a test, its unit and its range are questions to the model, see `findReadingProblems`. */
export const readingSchema: z.ZodMiniType<Reading> = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('per-cylinder'),
    measure: id,
    values: byCylinder,
    unit,
    suspect: cylinder,
    temperatures: z.exactOptional(z.strictObject({ values: byCylinder, unit })),
    nominal: z.exactOptional(z.number()),
  }),
  z.strictObject({ kind: z.literal('single'), measure: id, value: z.number(), unit }),
  z.strictObject({ kind: z.literal('pair'), measure: id, value: z.number(), reference: z.number(), unit }),
  z.strictObject({ kind: z.literal('trim'), measure: id, short: z.number(), long: z.number() }),
  z.strictObject({
    kind: z.literal('counts'),
    measure: id,
    counts: z.record(cylinderKey, count),
    suspect: cylinder,
    exposure: z.exactOptional(exposure),
  }),
  z.strictObject({ kind: z.literal('part-counts'), measure: id, before: countOfPart, after: countOfPart }),
]);
