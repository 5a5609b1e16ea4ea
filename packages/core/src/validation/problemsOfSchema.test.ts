import { describe, expect, test } from 'vitest';
import * as z from 'zod/mini';
import type { Problem } from '../errors/faultoddsError.ts';
import { problemsOfSchema } from './problemsOfSchema.ts';
import { problemParts } from '../words/languages/en/problems/problemParts.ts';
import { foundIn } from '../errors/foundIn.ts';

const schema = z.strictObject({
  id: z.string().check(z.regex(/^[a-z]+$/)),
  count: z.number().check(z.gte(1), z.lte(9)),
  colour: z.enum(['red', 'green']),
  sizes: z.optional(z.record(z.string().check(z.regex(/^[a-z]+$/)), z.number())),
  event: z.optional(
    z.discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('opened'), at: z.string() }),
      z.strictObject({ kind: z.literal('closed'), at: z.string(), by: z.string() }),
    ]),
  ),
});
const good = { id: 'a', count: 3, colour: 'red' };
function problemsIn(input: unknown): Problem[] {
  const checked = schema.safeParse(input);
  return checked.success ? [] : problemsOfSchema(checked.error, input);
}

describe('each kind of mistake has its code, its place and what was found', () => {
  test.each([
    ['nothing wrong', good, undefined],
    ['an unknown property', { ...good, hue: 1 }, { code: 'key-unknown', path: '/hue' }],
    ['a missing one', { id: 'a', colour: 'red' }, { code: 'value-missing', path: '/count' }],
    ['a missing choice', { id: 'a', count: 1 }, { code: 'value-missing', path: '/colour' }],
    [
      'another type',
      { ...good, count: '3' },
      { code: 'type-wrong', path: '/count', message: `found '3', expected number` },
    ],
    ['not a number', { ...good, count: NaN }, { code: 'type-wrong', path: '/count' }],
    [
      'another choice',
      { ...good, colour: 'blue' },
      { code: 'value-unknown', path: '/colour', message: `found 'blue', expected 'red' or 'green'` },
    ],
    ['too small', { ...good, count: 0 }, { code: 'too-small', path: '/count' }],
    ['too big', { ...good, count: 10 }, { code: 'too-big', path: '/count' }],
    ['a malformed id', { ...good, id: 'A b' }, { code: 'id-malformed', path: '/id' }],
    ['a malformed key', { ...good, sizes: { 'A b': 1 } }, { code: 'id-malformed', path: '/sizes/A b' }],
    ['an unknown kind', { ...good, event: { kind: 'burnt' } }, { code: 'kind-unknown', path: '/event/kind' }],
    [
      'a mistake inside a kind',
      { ...good, event: { kind: 'closed', at: 'x' } },
      { code: 'value-missing', path: '/event/by' },
    ],
    ['no object at all', [], { code: 'type-wrong', path: '' }],
  ])('%s', (_, input, expected) => {
    const found = problemsIn(input);
    if (expected === undefined) expect(found).toEqual([]);
    else expect(found).toEqual([expect.objectContaining(expected)]);
  });
});

test('all mistakes are listed', () => {
  expect(
    problemsIn({ id: 3, count: 99, hue: 1, tone: 2 })
      .map(({ path }) => path)
      .sort(),
  ).toEqual(['/colour', '/count', '/hue', '/id', '/tone']);
});

test.each([
  ['short', `'short'`],
  ['x'.repeat(100), `'${'x'.repeat(40)}…'`],
  [[1, 2], 'a list of 2'],
  [{ a: 1 }, 'an object'],
  [null, 'null'],
  [undefined, 'undefined'],
  [NaN, 'NaN'],
  [10n, '10'],
  [() => 1, 'a function'],
])('found %s is quoted as %s', (value, quoted) => {
  expect(problemParts.found(foundIn(value))).toBe(quoted);
});
