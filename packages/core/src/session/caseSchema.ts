import * as z from 'zod/mini';
import { pricesSchema } from '../cost/pricesSchema.ts';
import { LARGEST_NUMBER } from '../validation/largestNumber.ts';
import { engineLimits } from '../reading/engineLimits.ts';
import { readingSchema } from '../reading/readingSchema.ts';
import type { CaseDocument } from './caseDocument.ts';
import type { CaseEvent } from './caseEvent.ts';
import { mostEvents } from './mostEvents.ts';
import { newestCaseVersion } from './newestCaseVersion.ts';

const id = z.string().check(z.regex(/^[A-Za-z0-9][A-Za-z0-9_-]*$/), z.maxLength(100));
const title = z.string().check(z.minLength(1), z.maxLength(300));
const text = z.string().check(z.minLength(1), z.maxLength(5000));
const money = z.number().check(z.nonnegative(), z.maximum(LARGEST_NUMBER));
const note = z.exactOptional(text);
const { least, most } = engineLimits;

const events = [
  z.strictObject({ kind: z.literal('context-set'), feature: id, value: id }),
  z.strictObject({ kind: z.literal('context-cleared'), feature: id }),
  z.strictObject({
    kind: z.literal('engine-set'),
    cylinders: z.int().check(z.gte(least), z.lte(most)),
    suspect: z.int().check(z.gte(1), z.lte(most)),
    bank: z.exactOptional(z.literal([1, 2])),
  }),
  z.strictObject({
    kind: z.literal('result-recorded'),
    id,
    test: id,
    outcome: z.exactOptional(id),
    likelihood: z.exactOptional(z.record(id, z.number().check(z.nonnegative(), z.maximum(LARGEST_NUMBER)))),
    reading: z.exactOptional(readingSchema),
    faultActive: z.exactOptional(z.enum(['yes', 'no', 'unknown'])),
    note,
  }),
  z.strictObject({ kind: z.literal('repair-tried'), id, repair: id, cured: z.boolean(), note }),
  z.strictObject({ kind: z.literal('observation-retracted'), id }),
  z.strictObject({ kind: z.literal('access-opened'), access: id }),
  z.strictObject({ kind: z.literal('access-closed'), access: id }),
  z.strictObject({ kind: z.literal('equipment-set'), equipment: z.array(id).check(z.maxLength(1000)) }),
  z.strictObject({
    kind: z.literal('prices-set'),
    prices: pricesSchema,
  }),
  z.strictObject({ kind: z.literal('note-added'), text }),
  z.strictObject({ kind: z.literal('title-set'), title }),
] as const;

/** Shape of one event. Whether its ids exist is a question to the model, see `findEventProblems`. */
export const caseEventSchema: z.ZodMiniType<CaseEvent> = z.discriminatedUnion('kind', events);

/** Shape of a saved case, version 3; older ones are migrated first, see `migrateCase`. `$schema` may stand in a hand-written file, for editors. */
export const caseSchema: z.ZodMiniType<CaseDocument> = z.strictObject({
  $schema: z.exactOptional(z.string()),
  format: z.literal('faultodds-case'),
  version: z.literal(newestCaseVersion),
  id,
  title,
  model: z.exactOptional(
    z.strictObject({
      id,
      version: z.int().check(z.gte(1), z.lte(1e9)),
      hash: z.string().check(z.regex(/^[0-9a-f]{16}$/)),
    }),
  ),
  demo: z.exactOptional(
    z.strictObject({
      invented: z.literal(true),
      trueCause: id,
      lesson: text,
      testCost: z.exactOptional(money),
      repairCost: z.exactOptional(money),
      totalCost: z.exactOptional(money),
    }),
  ),
  events: z.array(caseEventSchema).check(z.maxLength(mostEvents)),
  unplaced: z.exactOptional(
    z
      .array(z.strictObject({ before: z.int().check(z.gte(0), z.lte(mostEvents)), event: caseEventSchema, reason: id }))
      .check(z.maxLength(mostEvents)),
  ),
});
