import { describe, expect, test } from 'vitest';
import type { Dimension } from '../units/dimension.ts';
import type { Comparison, MeasuredReading } from '../model/readingModel.ts';
import { applyRuleOfThumb } from './applyRuleOfThumb.ts';
import { comparedValue } from './comparedValue.ts';
import type { MeasuredValues } from './reading.ts';

const model = (compare: Comparison, measures: Dimension, absolute = false): MeasuredReading => ({
  kind: 'measured',
  id: 'm',
  label: 'invented, for tests',
  measures,
  compare,
  unit: 'ratio',
  absolute,
  limits: { low: 0, high: 1e9, source: 'judgement' },
  distributions: [],
  rows: [],
  wild: { share: 0.02, low: 0, high: 1.4, source: 'judgement' },
  ruleOfThumb: { text: 'rule', source: 'common-practice', limit: { kind: 'lowest-to-highest', atLeast: 0.75 } },
});
const cylinders = (values: Record<string, number>, unit = 'bar', suspect = 3): MeasuredValues => ({
  kind: 'per-cylinder',
  measure: 'm',
  values,
  unit,
  suspect,
});
const value = (compare: Comparison, measures: Dimension, reading: MeasuredValues, absolute = false): number =>
  comparedValue(model(compare, measures, absolute), reading).value;

describe('the compared value', () => {
  test.each([
    ['suspect-to-highest', 'pressure', cylinders({ 1: 12.4, 2: 12.1, 3: 9.2, 4: 12.5 }), 0.736],
    ['suspect-to-neighbours', 'relative', cylinders({ 1: 10, 2: 9, 3: 6, 4: 11 }, 'A'), 0.6],
    ['suspect-off-neighbours', 'pressure', cylinders({ 1: 50, 2: 52, 3: 39, 4: 54 }, 'kPa'), -25],
    ['suspect-minus-neighbours', 'angle', cylinders({ 1: 140, 2: 142, 3: 151 }, 'deg'), 10],
    ['to-reference', 'pressure', { kind: 'pair', measure: 'm', value: 60, reference: 150, unit: 'psi' }, 0.4],
    ['minus-reference', 'percent', { kind: 'pair', measure: 'm', value: 4, reference: 12, unit: '%' }, -8],
    ['loss-from-reference', 'percent', { kind: 'pair', measure: 'm', value: 60, reference: 80, unit: 'psi' }, 25], // published check F5
    ['loss-from-reference', 'percent', { kind: 'single', measure: 'm', value: 25, unit: '%' }, 25],
    ['trim-total', 'percent', { kind: 'trim', measure: 'm', short: -3, long: 12 }, 9],
    ['suspect-alone', 'time', { kind: 'single', measure: 'm', value: 1400, unit: 'us' }, 1.4],
  ] as const)('%s of %s', (compare, measures, reading, expected) => {
    expect(value(compare, measures, reading)).toBeCloseTo(expected, 12);
  });

  // published check F5 (supply of FAA AC 43.13-1B, par. 8-14)
  test.each([
    [75, 6.25],
    [70, 12.5],
    [65, 18.75],
    [60, 25],
    [50, 37.5],
    [40, 50],
  ])('%d psi held of 80 fed is a leakage of %d %%', (held, percent) => {
    const reading: MeasuredValues = { kind: 'pair', measure: 'm', value: held, reference: 80, unit: 'psi' };
    expect(value('loss-from-reference', 'percent', reading)).toBeCloseTo(percent, 10);
  });

  // every neighbour 'stood out' above 1.4 times a negative middle, and the suspect was compared with itself: 0
  test('a difference is taken from the middle of all neighbours, below zero too', () => {
    const reading = cylinders({ 1: -10, 2: -9, 3: 4, 4: -11 }, 'deg');
    expect(comparedValue(model('suspect-minus-neighbours', 'angle'), reading)).toMatchObject({
      value: 14,
      setAside: [],
    });
  });

  test('a difference counts without its sign where the model says so', () => {
    expect(value('suspect-minus-neighbours', 'angle', cylinders({ 1: 140, 3: 130 }, 'deg'), true)).toBe(10);
  });

  test('is the same in every unit and in every order of entry', () => {
    const bar = { 1: 12.4, 2: 12.1, 3: 9.2, 4: 12.5 };
    const psi = Object.fromEntries(Object.entries(bar).map(([c, v]) => [c, v * 14.50377377302092]));
    const kPa = Object.fromEntries(
      Object.entries(bar)
        .reverse()
        .map(([c, v]) => [c, v * 100]),
    );
    const expected = value('suspect-to-highest', 'pressure', cylinders(bar));
    expect(value('suspect-to-highest', 'pressure', cylinders(psi, 'psi'))).toBeCloseTo(expected, 12);
    expect(value('suspect-to-highest', 'pressure', cylinders(kPa, 'kPa'))).toBeCloseTo(expected, 12);
  });

  test('a neighbour as far above the others as the model says is set aside and named; where it does not say, none is', () => {
    const of = (above?: number): MeasuredReading => ({
      ...model('suspect-to-highest', 'pressure'),
      ...(above === undefined
        ? {}
        : { setAsideAbove: { best: above, low: above, high: above, ess: 5, source: 'judgement' } }),
    });
    const entered = cylinders({ 1: 12.4, 2: 125, 3: 12, 4: 12.5 });
    const slip = comparedValue(of(1.4), entered);
    expect(slip.setAside).toEqual(['2']);
    expect(slip.value).toBeCloseTo(0.96, 12);
    for (const above of [11, undefined]) {
      expect(comparedValue(of(above), entered)).toMatchObject({ setAside: [], value: 12 / 125 });
    }
  });

  test('windings are compared at one temperature', () => {
    const warm: MeasuredValues = {
      ...(cylinders({ 1: 12.358, 3: 10 }, 'ohm') as Extract<MeasuredValues, { kind: 'per-cylinder' }>),
      temperatures: { values: { 1: 80 }, unit: 'degC' },
    };
    expect(value('suspect-off-neighbours', 'resistance', warm)).toBeCloseTo(0, 10);
  });

  test('the figure of the maker stands in where no neighbour was read', () => {
    const alone: MeasuredValues = {
      ...(cylinders({ 3: 15 }, 'ohm') as Extract<MeasuredValues, { kind: 'per-cylinder' }>),
      nominal: 12,
    };
    expect(value('suspect-off-neighbours', 'resistance', alone)).toBeCloseTo(25, 12);
  });
});

// Three published rules on the same readings, check F6: US Army TM 5-4210-230-14&P-1 (75 % of highest), makers' manuals (70 %)
describe('the rule of thumb beside it', () => {
  test.each([
    [[12.4, 12.1, 12.5, 9.2], 0.736, 'broken', 'kept'],
    [[12.4, 12.1, 12.5, 9.6], 0.768, 'kept', 'kept'],
    [[12.4, 12.1, 12.5, 8.6], 0.688, 'broken', 'broken'],
    [[9, 9.1, 9.2, 9], 0.97826087, 'kept', 'kept'],
  ] as const)('%j: lowest over highest %d, 75 %% %s, 70 %% %s', (readings, ratio, at75, at70) => {
    const reading = cylinders(Object.fromEntries(readings.map((v, at) => [at + 1, v])), 'bar', 4);
    const { value: compared, byCylinder } = comparedValue(model('suspect-to-highest', 'pressure'), reading);
    for (const [atLeast, verdict] of [
      [0.75, at75],
      [0.7, at70],
    ] as const) {
      const rule = { text: '', source: 'common-practice', limit: { kind: 'lowest-to-highest', atLeast } } as const;
      const result = applyRuleOfThumb(rule, reading, compared, byCylinder);
      expect(result.verdict).toBe(verdict);
      expect(result.value).toBeCloseTo(ratio, 8);
    }
  });
});
