import { misfire } from '@faultodds/misfire';
import { describe, expect, test } from 'vitest';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import type { MeasuredReading } from '../model/readingModel.ts';
import { comparedValue } from './comparedValue.ts';
import { findReadingProblems } from './findReadingProblems.ts';
import type { PerCylinderReading } from './reading.ts';
import { readingLikelihood } from './readingLikelihood.ts';
import { unitsOf } from '../units/unitsOf.ts';

const compiled = compileModel(parseModel(misfire));
const compared = compiled.model.tests.flatMap((of) =>
  (of.readings ?? []).flatMap((reading) =>
    reading.kind === 'measured' && reading.compare.startsWith('suspect-') && reading.compare !== 'suspect-alone'
      ? [{ of, reading, name: `${of.id}, ${reading.id}` }]
      : [],
  ),
);
const ratios = compared.filter(({ reading }) => reading.compare !== 'suspect-minus-neighbours');

/** A reading of four cylinders in the reading's own unit. */
function read({ id, measures }: MeasuredReading, values: PerCylinderReading['values']): PerCylinderReading {
  return { kind: 'per-cylinder', measure: id, unit: unitsOf(measures)[0].symbol, suspect: 3, values };
}

const compression = compared.find(({ reading }) => reading.compare === 'suspect-to-highest')!;
const judge = (values: PerCylinderReading['values']) =>
  findReadingProblems(compression.of, { ...read(compression.reading, values), unit: 'bar' });

describe('neighbours that read 0', () => {
  test.each([
    // was called normal: 12.5 stood out beside two zeros, and 9 / 0 was above every range
    [{ 1: 0, 2: 0, 3: 9, 4: 12.5 }, '/values/1', ['1', '2']],
    // was NaN: 0 / 0
    [{ 1: 0, 2: 0, 3: 0, 4: 12.5 }, '/values/1', ['1', '2']],
    [{ 1: 12.5, 2: 0, 3: 9 }, '/values/2', ['2']],
  ])('%j: too few are left to compare with, and the mechanic is told what to do', (values, path, cylinders) => {
    const [problem, ...others] = judge(values);
    expect(others).toEqual([]);
    expect(problem).toMatchObject({ code: 'neighbour-zero', path, wording: { parts: { cylinders } } });
    expect(problem!.hint).toMatch(/read again.*another fault.*leave that cylinder out/);
  });

  test('one of three leaves enough, and is not compared with', () => {
    expect(judge({ 1: 0, 2: 12.1, 3: 9.2, 4: 12.5 })).toEqual([]);
    const off = ratios.find(({ reading }) => reading.id === 'hump')!;
    // the middle of 0, 10 and 10.4 is 10, of those that read something 10.2
    expect(comparedValue(off.reading, read(off.reading, { 1: 0, 2: 10, 3: 5.1, 4: 10.4 }))).toMatchObject({
      value: 0.5,
      setAside: ['1'],
    });
  });

  test.each(ratios)(
    "$name: the maker's figure does not take the place of a neighbour that was read",
    ({ of, reading }) => {
      const values = { 1: 0, 2: 0, 3: reading.limits.high / 8 };
      const input = { ...read(reading, values), nominal: reading.limits.high / 8 };
      expect(findReadingProblems(of, input)).toMatchObject([{ code: 'neighbour-zero', path: '/values' }]);
    },
  );

  test.each(ratios)('$name: a figure of 0 is nothing to compare with', ({ of, reading }) => {
    expect(findReadingProblems(of, { ...read(reading, { 3: 5 }), nominal: 0 })).toMatchObject([
      { code: 'nominal-zero', path: '/nominal' },
    ]);
  });
});

test.each(ratios)('$name: of whatever numbers are accepted, the compared value is a number', ({ of, reading }) => {
  const possible = [0, 5e-324, 1e-300, reading.limits.high / 10, reading.limits.high];
  for (const one of possible)
    for (const two of possible)
      for (const suspect of possible)
        for (const four of possible) {
          const input = read(reading, { 1: one, 2: two, 3: suspect, 4: four });
          if (findReadingProblems(of, input).length > 0) continue;
          const { value } = comparedValue(reading, input);
          expect(Number.isNaN(value), JSON.stringify(input.values)).toBe(false);
          const { support, rows } = readingLikelihood(compiled, of.id, input);
          for (const { likelihood } of [...support, ...rows])
            expect(likelihood, JSON.stringify(input.values)).toBeGreaterThan(0);
        }
});

test.each(ratios)('$name: a suspect that reads exactly 0 is called what the lowest numbers are', ({ of, reading }) => {
  const input = read(reading, { 1: 20, 2: 21, 3: 0, 4: 22 });
  const { outcomes, support, remarks } = readingLikelihood(compiled, of.id, input);
  const { bands, distributions, absolute } = reading;
  const lowest = bands!.find(({ from, to }) => (absolute === true ? to === undefined : from === undefined))!;
  const far = (a: number, b: number): number => (absolute === true ? b - a : a - b);
  const least = distributions.toSorted((a, b) => far(a.mean, b.mean))[0]!;
  // a pull that is reversed is further down than one that is missing
  if (reading.id === 'pull') expect(outcomes).toEqual(['one-weak-pull']);
  else expect(outcomes).toEqual(lowest.outcomes);
  expect(remarks).toEqual([]);
  const best = support.toSorted((a, b) => b.likelihood - a.likelihood)[0]!;
  if (reading.id !== 'pull') expect(best.id).toBe(least.id);
});

describe('air fed to a leak tester', () => {
  const leakDown = compiled.model.tests.find(({ id }) => id === 'leak-down')!;
  const reading = leakDown.readings!.find((one): one is MeasuredReading => one.kind === 'measured')!;
  const judged = (fed: number, model: MeasuredReading = reading) =>
    findReadingProblems(
      { ...leakDown, readings: [model] },
      { kind: 'pair', measure: reading.id, value: 500, reference: fed, unit: 'kPa' },
    ).map(({ code, path }) => `${code} ${path}`);

  test('beyond the limits of the model a unit was mistaken', () => {
    const { high } = reading.referenceLimits!;
    expect(judged(high)).toEqual([]);
    expect(judged(high + 1)).toEqual(['reading-implausible /reference']);
    expect(judged(2, { ...reading, referenceLimits: { low: 0, high: 1, source: 'judgement' } })).toHaveLength(2);
  });

  test('without limits anything above nothing is taken', () => {
    const { referenceLimits: _, ...open } = reading;
    expect(judged(1e6, open)).toEqual([]);
    expect(judged(0, open)).toEqual(['reference-zero /reference']);
  });
});
