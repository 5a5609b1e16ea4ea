import { describe, expect, test } from 'vitest';
import type { CountsReading } from '../model/readingModel.ts';
import type { CountsOfCylinders, Exposure } from './reading.ts';
import { supportOfCounts } from './supportOfCounts.ts';

const source = 'judgement';
const model: CountsReading = {
  kind: 'counts',
  id: 'counts',
  label: 'invented, for tests',
  rates: {
    healthy: { mean: 1, shape: 0.5, ess: 8, source },
    fault: { mean: 120, shape: 0.8, ess: 8, source },
    scattered: { mean: 25, shape: 1, ess: 5, source },
  },
  patterns: { suspectOnly: 'one', suspectAndOne: 'two', all: 'scattered', none: 'none' },
  exposureUnknown: { low: 1000, high: 30_000, source },
  wild: { share: 0.02, source },
  ruleOfThumb: { text: 'rule', source, limit: { kind: 'share-of-all', moreThan: 0.9 } },
};
const firings = (amount: number): { exposure: Exposure } => ({ exposure: { amount, unit: 'firings' } });
const counted = (
  counts: Record<string, number>,
  more: Partial<CountsOfCylinders> = firings(2000),
): CountsOfCylinders => ({
  kind: 'counts',
  measure: 'counts',
  suspect: 2,
  counts,
  ...more,
});
const best = (reading: CountsOfCylinders): string =>
  Object.entries(supportOfCounts(model, reading).byOutcome).sort(([, a], [, b]) => b - a)[0]![0];

test.each([
  [{ 1: 2, 2: 350, 3: 0, 4: 1 }, 'one'],
  [{ 1: 220, 2: 350, 3: 0, 4: 1 }, 'two'],
  [{ 1: 40, 2: 35, 3: 60, 4: 21 }, 'scattered'],
  [{ 1: 1, 2: 0, 3: 0, 4: 0 }, 'none'],
])('%j is %s', (counts, pattern) => {
  expect(best(counted(counts))).toBe(pattern);
  expect(supportOfCounts(model, counted(counts)).elsewhere).toBe(false);
});

test('revolutions and firings say the same', () => {
  const counts = { 1: 2, 2: 35, 3: 0 };
  const inRevolutions = counted(counts, { exposure: { amount: 4000, unit: 'revolutions' } });
  expect(supportOfCounts(model, inRevolutions)).toEqual(supportOfCounts(model, counted(counts)));
});

test('without an exposure the shares still tell one cylinder from all', () => {
  expect(best(counted({ 1: 2, 2: 350, 3: 0, 4: 1 }, {}))).toBe('one');
  expect(best(counted({ 1: 90, 2: 80, 3: 70, 4: 100 }, {}))).toBe('scattered');
});

test('a misfire on another cylinder says nothing about the suspect, and is told', () => {
  const { byOutcome, elsewhere } = supportOfCounts(model, counted({ 1: 400, 2: 0, 3: 0, 4: 1 }));
  expect(elsewhere).toBe(true);
  expect(new Set(Object.values(byOutcome))).toEqual(new Set([1]));
});

test('the more is counted, the more it says, but never more than the wild share lets it', () => {
  const ratio = (own: number, amount: number): number => {
    const { byOutcome } = supportOfCounts(model, counted({ 1: 0, 2: own, 3: 0, 4: 0 }, firings(amount)));
    return byOutcome['one']! / byOutcome['none']!;
  };
  const [few, more, many] = [ratio(2, 100), ratio(20, 1000), ratio(40_000, 2_000_000)];
  expect(few).toBeLessThan(more);
  expect(more).toBeLessThanOrEqual(many);
  expect(many).toBeLessThan((4 * 1) / 0.02);
});

describe('huge and empty counts stay finite', () => {
  test.each([
    [{ 1: 0, 2: 0 }, 1e9],
    [{ 1: 900_000_000, 2: 999_999_999 }, 1e9],
    [{ 1: 0, 2: 1 }, 1],
  ])('%j in %d', (counts, amount) => {
    for (const value of Object.values(supportOfCounts(model, counted(counts, firings(amount))).byOutcome)) {
      expect(value).toBeGreaterThan(0);
      expect(value).toBeLessThanOrEqual(1);
    }
  });
});
