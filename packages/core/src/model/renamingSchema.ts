import * as z from 'zod/mini';
import { idSchema as id } from './idSchema.ts';

const test = z.strictObject({ test: id });
const outcome = z.strictObject({ test: id, outcome: id });
const outcomes = z.strictObject({ test: id, outcomes: z.array(id).check(z.minLength(2)) });
const reading = z.strictObject({ test: id, reading: id });
const feature = z.strictObject({ feature: id });
const value = z.strictObject({ feature: id, value: id });
const plain = (kind: string): z.ZodMiniType => z.strictObject({ [kind]: id });

const renaming = (was: z.ZodMiniType, is: z.ZodMiniType = was): z.ZodMiniType =>
  z.strictObject({ was, is: z.optional(is), note: z.optional(z.string().check(z.minLength(1))) });

/** The shape of a renaming: a part becomes a part of its own kind. What the ids mean is checked by `findRenamingProblems`. */
export const renamingSchema: z.ZodMiniType = z.union([
  renaming(test),
  renaming(outcome, z.union([outcome, outcomes])),
  renaming(reading),
  renaming(feature),
  renaming(value),
  ...['cause', 'repair', 'access', 'equipment', 'model'].map((kind) => renaming(plain(kind))),
]);
