import { LARGEST_NUMBER } from '../validation/largestNumber.ts';
import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import { OptionError } from '../errors/optionError.ts';
import { problemFor } from '../validation/problemFor.ts';

const argumentsSchema = z.strictObject({
  probabilities: z.record(z.string(), optionSchemas.number(0, 1)),
  of: optionSchemas.whole(1, LARGEST_NUMBER),
});

/** Probabilities as whole cases out of `of`, summing to exactly `of`: each rounded down, then the largest remainders up, so that
 * nothing is off by a whole case and pictures can be counted.
 * @param probabilities id -> probability, sums to 1 (to a millionth). @param of number of cases, a whole number. Default 1000.
 * @throws OptionError
 * @example naturalFrequencies({ coil: 2 / 3, plug: 1 / 3 }) // { coil: 667, plug: 333 }
 * Source: Gigerenzer & Hoffrage 1995 (why whole cases are understood); largest remainders after Hamilton. */
export function naturalFrequencies(
  probabilities: Readonly<Record<string, number>>,
  of = 1000,
): Readonly<Record<string, number>> {
  checkOptions(argumentsSchema, { probabilities, of });
  const sum = Object.values(probabilities).reduce((all, one) => all + one, 0);
  if (!(Math.abs(sum - 1) < 1e-6)) throw new OptionError([problemFor('row-not-one/table', '/probabilities', { sum })]);
  const shares = Object.entries(probabilities).map(([id, probability]) => {
    const exact = probability * of;
    return { id, whole: Math.floor(exact), remainder: exact - Math.floor(exact) };
  });
  const missing = of - shares.reduce((sum, share) => sum + share.whole, 0);
  const rounded = new Set(
    [...shares]
      .sort((a, b) => b.remainder - a.remainder)
      .slice(0, Math.max(0, missing))
      .map((share) => share.id),
  );
  return Object.fromEntries(shares.map(({ id, whole }) => [id, whole + Number(rounded.has(id))]));
}
