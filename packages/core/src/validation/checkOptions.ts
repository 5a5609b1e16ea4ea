import type * as z from 'zod/mini';
import { atLeastOne } from '../errors/atLeastOne.ts';
import { OptionError } from '../errors/optionError.ts';
import { problemsOfSchema } from './problemsOfSchema.ts';

/** Looks at the options of a public function once, at its entry; inside, the types are trusted.
 * @param path JSON Pointer of the options among the arguments, `''` where paths start at an option.
 * @throws OptionError with everything that is wrong */
export function checkOptions(schema: z.ZodMiniType, options: unknown, path = ''): void {
  const checked = schema.safeParse(options);
  if (checked.success) return;
  const problems = problemsOfSchema(checked.error, options).map((one) => ({ ...one, path: path + one.path }));
  if (atLeastOne(problems)) throw new OptionError(problems);
}
