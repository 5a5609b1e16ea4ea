import { describe, expect, test } from 'vitest';
import { misfire } from '@faultodds/misfire';
import { ReadingError } from '../errors/readingError.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import { parseReading } from './parseReading.ts';

const compiled = compileModel(parseModel(misfire));
const refused = (of: string, input: unknown): ReadingError => {
  try {
    parseReading(compiled, of, input);
  } catch (error) {
    if (error instanceof ReadingError) return error;
    throw error;
  }
  expect.unreachable(`${JSON.stringify(input)} was taken`);
};

const four = { kind: 'per-cylinder', unit: 'bar', suspect: 3, values: { 1: 12.4, 2: 12.1, 3: 9.2, 4: 12.5 } };
const run = { amount: 2000, unit: 'revolutions' };

test('the first reading of a test need not be named', () => {
  expect(parseReading(compiled, 'cranking-compression', four)).toEqual({ ...four, measure: 'pressure' });
  expect(parseReading(compiled, 'valve-lift-dial', { ...four, measure: 'exhaust-lift', unit: 'mm' }).measure).toBe(
    'exhaust-lift',
  );
});

test('a partly filled set is taken as long as the suspect and one neighbour are in it', () => {
  expect(parseReading(compiled, 'cranking-compression', { ...four, values: { 3: 9.2, 4: 12.5 } })).toBeTruthy();
});

describe('nonsense is refused at its field, with what to do', () => {
  test.each([
    [
      'cranking-compression',
      { ...four, values: { 1: 12.4, 2: -1, 3: 9.2 } },
      'reading-implausible',
      '/values/2',
      /sign/,
    ],
    [
      'cranking-compression',
      { ...four, values: { 1: 180, 2: 178, 3: 175 } },
      'reading-implausible',
      '/values/1',
      /psi/,
    ],
    [
      'cranking-compression',
      { ...four, values: { 1: 12.4, 2: 12.1, 4: 12.5 } },
      'suspect-missing',
      '/values/3',
      /suspect/,
    ],
    ['cranking-compression', { ...four, values: { 3: 9.2 } }, 'neighbour-missing', '/values', /other cylinder/],
    ['cranking-compression', { ...four, values: { 3: 9.2, 1: 0 } }, 'neighbour-zero', '/values', /gauge/],
    ['cranking-compression', { ...four, unit: 'furlong' }, 'unit-unknown', '/unit', /kPa, bar, psi/],
    ['cranking-compression', { ...four, values: { 17: 12, 3: 9 } }, 'id-malformed', '/values/17', /./],
    ['cranking-compression', { ...four, values: { 1: '12.4', 3: 9.2 } }, 'type-wrong', '/values/1', /number/],
    ['cranking-compression', { ...four, values: { 1: NaN, 3: 9.2 } }, 'type-wrong', '/values/1', /number/],
    ['cranking-compression', { ...four, measure: 'presure' }, 'measure-unknown', '/measure', /pressure/],
    [
      'cranking-compression',
      { kind: 'pair', value: 1, reference: 2, unit: 'bar' },
      'kind-unfit',
      '/kind',
      /per-cylinder or single/,
    ],
    ['cranking-compression', { kind: 'single', value: -0.5, unit: 'ratio' }, 'reading-implausible', '/value', /sign/],
    ['cranking-compression', { kind: 'guess' }, 'kind-unknown', '/kind', /kinds/],
    ['cranking-compression', null, 'type-wrong', '', /./],
    [
      'running-compression',
      { kind: 'pair', value: 5, reference: 0, unit: 'bar' },
      'reference-zero',
      '/reference',
      /above 0/,
    ],
    [
      'leak-down',
      { kind: 'pair', value: 80, reference: 60, unit: 'psi' },
      'reading-implausible',
      '/value',
      /exchanged/,
    ],
    ['leak-down', { kind: 'single', value: 130, unit: '%' }, 'reading-implausible', '/value', /decimal/],
    [
      'misfire-counters',
      { kind: 'counts', suspect: 1, counts: { 1: 1500, 2: 0 }, exposure: run },
      'count-above-firings',
      '/counts/1',
      /two revolutions/,
    ],
    [
      'misfire-counters',
      { kind: 'counts', suspect: 1, counts: { 2: 3, 3: 0 }, exposure: run },
      'suspect-missing',
      '/counts/1',
      /suspect/,
    ],
    [
      'misfire-counters',
      { kind: 'counts', suspect: 1, counts: { 1: 3 }, exposure: run },
      'neighbour-missing',
      '/counts',
      /other cylinder/,
    ],
    ['misfire-counters', { kind: 'counts', suspect: 1, counts: { 1: 1.5, 2: 0 } }, 'type-wrong', '/counts/1', /./],
    [
      'misfire-counters',
      { kind: 'counts', suspect: 1, counts: { 1: 5, 2: 0 }, exposure: { amount: 0, unit: 'firings' } },
      'too-small',
      '/exposure/amount',
      /./,
    ],
    [
      'coil-swap',
      { kind: 'part-counts', before: { suspect: 9, exposure: run }, after: { suspect: 9, exposure: run } },
      'partner-missing',
      '/before/partner',
      /both/,
    ],
    [
      'coil-replaced',
      { kind: 'part-counts', before: { suspect: 9, partner: 1, exposure: run }, after: { suspect: 9, exposure: run } },
      'partner-unfit',
      '/before/partner',
      /leave/,
    ],
    [
      'injector-current',
      { ...four, unit: 'ohm', temperatures: { values: { 1: 900 }, unit: 'degC' } },
      'reading-implausible',
      '/temperatures/values/1',
      /./,
    ],
    [
      'injector-current',
      { ...four, unit: 'ohm', temperatures: { values: { 1: 20 }, unit: 'warm' } },
      'unit-unknown',
      '/temperatures/unit',
      /degC/,
    ],
    ['smoke-intake', four, 'reading-not-possible', '', /no-leak/],
  ])('%s: %j is %s at %j', (of, input, code, path, hint) => {
    const error = refused(of, input);
    expect(error.problems).toContainEqual(expect.objectContaining({ code, path, hint: expect.stringMatching(hint) }));
  });

  test('a test that does not exist is named with its nearest', () => {
    expect(refused('cranking-compresion', four)).toMatchObject({
      code: 'test-unknown',
      path: '/test',
      hint: expect.stringContaining('cranking-compression'),
    });
  });

  test('all problems are told, not the first', () => {
    const error = refused('cranking-compression', { ...four, values: { 1: -12.4, 2: 1200 } });
    expect(error.problems.map(({ path }) => path)).toEqual(['/values/1', '/values/2', '/values/3']);
  });

  test('keys that reach for prototypes are refused', () => {
    const hostile: unknown = JSON.parse(
      '{"kind":"per-cylinder","unit":"bar","suspect":3,"values":{"__proto__":1,"3":9}}',
    );
    expect(refused('cranking-compression', hostile).problems.length).toBeGreaterThan(0);
    expect(({} as Record<string, unknown>)['1']).toBeUndefined();
  });
});
