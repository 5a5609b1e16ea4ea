import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import { randomLcg } from 'd3-random';
import type { Random } from '@faultodds/inference/sampling';

export type { Random };

const seedSchema = z.strictObject({ seed: optionSchemas.seed });

/** A generator that repeats itself for the same seed (any finite number): print the seed with what it made.
 * @throws OptionError when the seed is no finite number
 * @example createRandom(7)() // 0.2388
 * Source: linear congruential generator of d3-random, after Press et al., Numerical Recipes. */
export function createRandom(seed: number): Random {
  checkOptions(seedSchema, { seed });
  return randomLcg(seed);
}
