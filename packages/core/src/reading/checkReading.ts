import type * as z from 'zod/mini';
import { atLeastOne } from '../errors/atLeastOne.ts';
import { problemsOfSchema } from '../validation/problemsOfSchema.ts';
import { ReadingError } from '../errors/readingError.ts';

/** Looks at plain numbers that were read. @throws ReadingError with everything that is wrong */
export function checkReading(schema: z.ZodMiniType, numbers: unknown): void {
  const checked = schema.safeParse(numbers);
  const problems = checked.success ? [] : problemsOfSchema(checked.error, numbers);
  if (atLeastOne(problems)) throw new ReadingError(problems);
}
