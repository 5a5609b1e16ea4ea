import { describe, expect, test } from 'vitest';
import { formatMinutes } from './formatMinutes.ts';
import { formatMoney } from './formatMoney.ts';
import { formatProbability } from './formatProbability.ts';
import { formatTimes } from './formatTimes.ts';

describe('probability', () => {
  test.each([
    [0, 'fewer than 1 in 1000'],
    [0.000999, 'fewer than 1 in 1000'],
    [0.001, '0.1%'],
    [0.00314, '0.31%'],
    [0.0314, '3.1%'],
    [0.314, '31%'],
    [0.996, '99.6%'],
    [0.999, '99.9%'],
    [0.99901, 'more than 999 in 1000'],
    [1, 'more than 999 in 1000'],
  ])('%f is said as %s', (probability, words) => expect(formatProbability(probability)).toBe(words));

  test('never 0% and never 100%, whatever the probability', () => {
    const said = Array.from({ length: 100_001 }, (_, at) => formatProbability(at / 100_000));
    expect(said.filter((words) => /^(0|100)(\.0+)?%$/.test(words))).toEqual([]);
  });
});

test.each([
  [{ amount: 130, currency: 'unit' }, '130 units'],
  [{ amount: 1, currency: 'unit' }, '1 unit'],
  [{ amount: 0.99, currency: 'unit' }, '0.99 units'],
  [{ amount: 1637.4, currency: 'unit' }, '1,637 units'],
  [{ amount: 4.79, currency: 'unit' }, '4.8 units'],
  [{ amount: 4.998, currency: 'unit' }, '5 units'],
  [{ amount: 9.96, currency: 'unit' }, '10 units'],
  [{ amount: -0.001, currency: 'unit' }, '0 units'],
  [{ amount: -0.001, currency: 'EUR' }, '€0'],
  [{ amount: 4.998, currency: 'EUR' }, '€5'],
  [{ amount: 1637.4, currency: 'EUR' }, '€1,637'],
  [{ amount: 7.5, currency: 'EUR' }, '€7.50'],
  [{ amount: 9.996, currency: 'EUR' }, '€10'],
  [{ amount: 9.994, currency: 'EUR' }, '€9.99'],
  [{ amount: -12.2, currency: 'EUR' }, '-€12'],
  [{ amount: 3, currency: 'XYZ' }, '3 XYZ'],
  [{ amount: 3, currency: 'shells' }, '3 shells'],
])('money %j is said as %s', (money, words) => expect(formatMoney(money)).toBe(words));

test.each([
  [0, '0 min'],
  [0.3, 'under 1 min'],
  [24.6, '25 min'],
  [60, '1 h'],
  [119.7, '2 h'],
  [150, '2 h 30 min'],
])('%f minutes are said as %s', (minutes, words) => expect(formatMinutes(minutes)).toBe(words));

test.each([
  [1.26, '1.3 times'],
  [23.7, '24 times'],
  [1000.1, 'more than 1000 times'],
  [Infinity, 'more than 1000 times'],
])('%f times is said as %s', (ratio, words) => expect(formatTimes(ratio)).toBe(words));
