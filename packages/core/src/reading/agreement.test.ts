// The same fact entered as a number and as an outcome must say the same: for every row of every reading of the misfire model, the chance
// that the number falls into a band is that of the outcomes of the band in the row of the test, within 0.15 (both are judgement, and
// three or four distributions cannot follow every row). Where bands overlap the outcome's chance lies between the two.
import { describe, expect, test } from 'vitest';
import { misfire } from '@faultodds/misfire';
import { distributionFunction, type Distribution } from '../distributions/logDensity.ts';
import { parseModel } from '../model/parseModel.ts';
import type { Test } from '../model/model.ts';
import type { ConditionalRow } from '../model/row.ts';
import type { MeasuredReading } from '../model/readingModel.ts';

const WITHIN = 0.15;
const model = parseModel(misfire);
const measured = model.tests.flatMap((of) =>
  (of.readings ?? []).flatMap((reading) => (reading.kind === 'measured' ? [{ of, reading }] : [])),
);

// Outcomes that a number of one side cannot show: the lift of the other side, a signal that is irregular whatever its offset.
const ELSEWHERE: Readonly<Record<string, readonly string[]>> = {
  'intake-lift': ['exhaust_shut', 'exhaust_reduced'],
  'exhaust-lift': ['intake_shut', 'intake_reduced'],
  offset: ['false_report', 'flexplate-damaged'],
};

function chanceBetween(
  { distributions, wild }: MeasuredReading,
  row: ConditionalRow,
  from: number,
  to: number,
): number {
  const [low, high] = [Math.max(from, wild.low), Math.min(to, wild.high)];
  if (low >= high) return 0;
  const flat = (high - low) / (wild.high - wild.low);
  return Object.entries(row.p).reduce((sum, [id, share]) => {
    const distribution = distributions.find((one) => one.id === id) as Distribution | undefined;
    const upTo = (x: number): number => distributionFunction(distribution!, x);
    const inside = (upTo(high) - upTo(low)) / (upTo(wild.high) - upTo(wild.low));
    return sum + share * ((1 - wild.share) * inside + wild.share * flat);
  }, 0);
}

/** Parts of the range that no other band reaches. */
function exclusive({ bands = [] }: MeasuredReading, at: number): readonly [number, number] {
  const { from = -Infinity, to = Infinity } = bands[at]!;
  const others = bands.filter((_, other) => other !== at);
  const cutsLow = others
    .filter(({ from: a = -Infinity, to: b = Infinity }) => a <= from && b > from)
    .map(({ to: b = Infinity }) => b);
  const cutsHigh = others
    .filter(({ from: a = -Infinity, to: b = Infinity }) => b >= to && a < to)
    .map(({ from: a = -Infinity }) => a);
  return [Math.max(from, ...cutsLow), Math.min(to, ...cutsHigh)];
}

const outcomeRow = (of: Test, row: ConditionalRow): ConditionalRow | undefined =>
  of.rows.find(({ when }) => JSON.stringify(when) === JSON.stringify(row.when));

describe('a number says what its outcome says', () => {
  test.each(measured.filter(({ reading }) => reading.bands !== undefined))('$of.id, $reading.id', ({ of, reading }) => {
    for (const row of reading.rows) {
      const matching = outcomeRow(of, row);
      const states = Object.values(row.when).flat();
      if (matching === undefined || ELSEWHERE[reading.id]?.some((state) => states.includes(state)) === true) continue;
      reading.bands!.forEach(({ outcomes, from = -Infinity, to = Infinity }, at) => {
        const stated = outcomes.reduce((sum, outcome) => sum + matching.p[outcome]!, 0);
        const where = `${JSON.stringify(row.when)} ${outcomes.join(' or ')}`;
        expect(stated, where).toBeLessThan(chanceBetween(reading, row, from, to) + WITHIN);
        expect(stated, where).toBeGreaterThan(chanceBetween(reading, row, ...exclusive(reading, at)) - WITHIN);
      });
    }
  });
});

test('rows of a reading apply in the order of the rows of its test', () => {
  for (const { of, reading } of measured) {
    const places = reading.rows.map((row) =>
      of.rows.findIndex(({ when }) => JSON.stringify(when) === JSON.stringify(row.when)),
    );
    expect(places, `${of.id} ${reading.id}`).not.toContain(-1);
    expect(places, `${of.id} ${reading.id}`).toEqual(places.toSorted((a, b) => a - b));
  }
});

test('every band of a reading is part of its range, and together they cover it', () => {
  for (const { reading } of measured) {
    for (let at = 0; at <= 100 && reading.bands !== undefined; at += 1) {
      const x = reading.wild.low + (at / 100) * (reading.wild.high - reading.wild.low);
      const called = reading.bands.filter(({ from = -Infinity, to = Infinity }) => x >= from && x < to);
      expect(called.length, `${reading.id} at ${x}`).toBeGreaterThan(0);
    }
  }
});
