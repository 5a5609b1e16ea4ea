import * as z from 'zod/mini';
import { LARGEST_NUMBER } from './largestNumber.ts';

/** A whole number from `least` to `most`. */
const whole = (least: number, most: number): z.ZodMiniType<number> => z.int().check(z.gte(least), z.lte(most));
/** A budget: a whole number, or `Infinity` for no limit. */
const budget = (least: number): z.ZodMiniType<number> => z.union([whole(least, LARGEST_NUMBER), z.literal(Infinity)]);
const number = (least: number, most: number): z.ZodMiniType<number> => z.number().check(z.gte(least), z.lte(most));
/** Seeds are any finite number. */
const seed: z.ZodMiniType<number> = z.number();
/** An `AbortSignal`, or what looks like one. */
const signal: z.ZodMiniType = z.looseObject({ aborted: z.boolean() });
const callback: z.ZodMiniType = z.custom((value) => typeof value === 'function', { params: { expected: 'function' } });
/** A set of names. */
const names: z.ZodMiniType = z.set(z.string());

/** What the options of public functions are made of. */
export const optionSchemas: {
  readonly whole: typeof whole;
  readonly budget: typeof budget;
  readonly number: typeof number;
  readonly seed: typeof seed;
  readonly signal: typeof signal;
  readonly callback: typeof callback;
  readonly names: typeof names;
} = { whole, budget, number, seed, signal, callback, names };
