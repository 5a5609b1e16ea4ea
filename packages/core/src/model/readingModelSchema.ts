import * as z from 'zod/mini';
import { LARGEST_NUMBER } from '../validation/largestNumber.ts';

const id = z.string().check(z.regex(/^[a-z0-9][a-z0-9_-]*$/));
const text = z.string().check(z.minLength(1));
const positive = z.number().check(z.positive(), z.maximum(LARGEST_NUMBER));
const number = z.number().check(z.gte(-LARGEST_NUMBER), z.maximum(LARGEST_NUMBER));
const share = z.number().check(z.positive(), z.lt(1));
const ess = z.number().check(z.nonnegative(), z.maximum(LARGEST_NUMBER));

const limits = z.strictObject({ low: number, high: number, source: id });
const aboveOne = z.number().check(z.gt(1), z.maximum(LARGEST_NUMBER));
const timesTheMedian = z.strictObject({ best: aboveOne, low: aboveOne, high: aboveOne, ess, source: id });
const rate = z.strictObject({ mean: positive, shape: positive, ess, source: id });
const wildShare = z.strictObject({ share, source: id });

const ruleOfThumb = z.strictObject({
  text,
  source: id,
  limit: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('lowest-to-highest'), atLeast: positive }),
    z.strictObject({
      kind: z.literal('compared'),
      atLeast: z.exactOptional(number),
      atMost: z.exactOptional(number),
    }),
    z.strictObject({ kind: z.literal('share-of-all'), moreThan: share }),
    z.strictObject({ kind: z.literal('most-counts') }),
  ]),
});

const measured = z.strictObject({
  kind: z.literal('measured'),
  id,
  label: text,
  measures: z.enum([
    'pressure',
    'percent',
    'ratio',
    'angle',
    'length',
    'time',
    'resistance',
    'speed',
    'temperature',
    'relative',
  ]),
  compare: z.enum([
    'suspect-alone',
    'suspect-to-highest',
    'suspect-to-neighbours',
    'suspect-off-neighbours',
    'suspect-minus-neighbours',
    'to-reference',
    'minus-reference',
    'loss-from-reference',
    'trim-total',
  ]),
  unit: text,
  absolute: z.exactOptional(z.boolean()),
  ownError: z.exactOptional(z.boolean()),
  limits,
  referenceLimits: z.exactOptional(limits),
  setAsideAbove: z.exactOptional(timesTheMedian),
  distributions: z
    .array(
      z.strictObject({
        id,
        label: text,
        family: z.enum(['normal', 'lognormal', 'gamma']),
        mean: number,
        sd: z.exactOptional(positive),
        shape: z.exactOptional(positive),
        ess,
        source: id,
      }),
    )
    .check(z.minLength(2)),
  rows: z
    .array(
      z.strictObject({
        when: z.record(id, z.array(id).check(z.minLength(1))),
        p: z.record(id, positive),
        ess,
        source: id,
      }),
    )
    .check(z.minLength(1)),
  wild: z.strictObject({ share, low: number, high: number, source: id }),
  beyond: z.exactOptional(z.strictObject({ below: z.exactOptional(id), above: z.exactOptional(id) })),
  bands: z.exactOptional(
    z.array(
      z.strictObject({
        outcomes: z.array(id).check(z.minLength(1)),
        from: z.exactOptional(number),
        to: z.exactOptional(number),
      }),
    ),
  ),
  ruleOfThumb,
});

const counts = z.strictObject({
  kind: z.literal('counts'),
  id,
  label: text,
  rates: z.strictObject({ healthy: rate, fault: rate, scattered: rate }),
  patterns: z.strictObject({ suspectOnly: id, suspectAndOne: id, all: id, none: id }),
  exposureUnknown: z.strictObject({ low: positive, high: positive, source: id }),
  wild: wildShare,
  ruleOfThumb,
});

const partCounts = z.strictObject({
  kind: z.literal('part-counts'),
  id,
  label: text,
  rates: z.strictObject({ healthy: rate, fault: rate }),
  carriesOver: z.strictObject({ shape: positive, source: id }),
  outcomes: z.strictObject({ follows: z.exactOptional(id), stays: id, gone: id }),
  wild: wildShare,
  ruleOfThumb,
});

/** The shape of a reading of a test. What a shape cannot say is checked by `findReadingModelProblems`. */
export const readingModelSchema: z.ZodMiniType = z.discriminatedUnion('kind', [measured, counts, partCounts]);
