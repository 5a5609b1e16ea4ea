// NIST Special Publication 811 (2008), appendix B; published check F1. Tolerance 1e-12 relative: exact by definition, rounded once.
import { describe, expect, test } from 'vitest';
import type { Dimension } from '../units/dimension.ts';
import { convertUnit } from './convertUnit.ts';
import { resistanceAt20 } from './resistanceAt20.ts';
import { unitsOf } from '../units/unitsOf.ts';

describe('conversions', () => {
  test.each([
    ['pressure', 1, 'psi', 'Pa', 6894.757293168362],
    ['pressure', 1, 'bar', 'kPa', 100],
    ['pressure', 1, 'bar', 'psi', 14.50377377302092],
    ['pressure', 1, 'kPa', 'psi', 0.14503773773020923],
    ['pressure', 1, 'kgf/cm2', 'Pa', 98066.5],
    ['pressure', 1, 'inHg', 'Pa', 3386.388640341],
    ['pressure', 150, 'psi', 'bar', 10.342135939752541],
    ['pressure', 100, 'psi', 'kPa', 689.4757293168361],
    ['pressure', 1, 'mmHg', 'Pa', 133.322387415],
    ['length', 1, 'in', 'mm', 25.4],
    ['angle', 10, 'deg cam', 'deg', 20],
    ['temperature', 212, '°F', '°C', 100],
    ['temperature', -40, 'degF', 'degC', -40],
    ['temperature', 293.15, 'K', 'degC', 20],
    ['resistance', 1.2, 'kohm', 'ohm', 1200],
    ['percent', 0.5, 'ratio', '%', 50],
  ] as const)('%s: %d %s in %s', (dimension, value, from, to, expected) => {
    expect(Math.abs(convertUnit(dimension, value, from, to) / expected - 1)).toBeLessThan(1e-12);
  });

  test.each(['PSI', ' bar ', 'Kpa', 'lbf/in2', 'psig'])('%j is understood', (unit) => {
    expect(convertUnit('pressure', 1, unit, 'kPa')).toBeGreaterThan(0);
  });

  test.each([
    ['pressure', 'mPa'],
    ['pressure', 'stone'],
    ['length', 'bar'],
  ] as const)('%s: %s is no unit, and the error names those that are', (dimension, unit) => {
    expect(() => convertUnit(dimension, 1, unit, unitsOf(dimension)[0].symbol)).toThrow(
      expect.objectContaining({
        name: 'ReadingError',
        code: 'unit-unknown',
        path: '/from',
        hint: expect.stringMatching(/^use /),
      }),
    );
  });

  test('there and back is where it was', () => {
    const dimensions: Dimension[] = ['pressure', 'length', 'angle', 'time', 'resistance', 'temperature', 'percent'];
    for (const dimension of dimensions) {
      for (const { symbol } of unitsOf(dimension)) {
        const [{ symbol: canonical }] = unitsOf(dimension);
        expect(convertUnit(dimension, convertUnit(dimension, 12.4, symbol, canonical), canonical, symbol)).toBeCloseTo(
          12.4,
          9,
        );
      }
    }
  });
});

// IEC 60028: 0.00393 per kelvin at 20 degrees C, so a copper winding of 10 ohm reads 12.358 ohm at 80 degrees C
test('a copper winding is as many ohms at 20 degrees C as its warm reading says', () => {
  expect(resistanceAt20(12.358, 80)).toBeCloseTo(10, 12);
  expect(resistanceAt20(10, 20)).toBe(10);
});
