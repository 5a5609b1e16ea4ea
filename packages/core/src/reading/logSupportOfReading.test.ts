import { expect, test } from 'vitest';
import type { MeasuredReading } from '../model/readingModel.ts';
import { logSupportOfReading } from './logSupportOfReading.ts';

const one = { label: 'invented', family: 'normal', sd: 0.1, ess: 5, source: 'judgement' } as const;
const reading = {
  distributions: [
    { ...one, id: 'low', mean: 0.5 },
    { ...one, id: 'whole', mean: 1 },
  ],
  wild: { share: 0.02, low: 0, high: 1.5, source: 'judgement' },
} as unknown as MeasuredReading;
const support = (value: number): number[] => [...logSupportOfReading(reading, value)];

test('a value supports the distribution it lies in, no further against one than the wild share allows', () => {
  const [low, whole] = support(1) as [number, number];
  expect(whole).toBeGreaterThan(1);
  expect(low).toBeLessThan(-3);
  expect(low).toBeGreaterThanOrEqual(Math.log(0.02));
});

test('the ends of the range belong to it; beyond them, and of no number, nothing is said', () => {
  for (const end of [0, 1.5]) for (const log of support(end)) expect(log).toBeLessThan(0);
  for (const beyond of [-1e-9, 1.5 + 1e-9, NaN]) expect(support(beyond)).toEqual([0, 0]);
});

test('by hand: the density over that of anything in the range alike, mixed with the wild share', () => {
  // at its mean a normal of 0.1 has 1 / (0.1 sqrt(2 pi)); the range is 1.5 wide and cuts off 3e-7 of it
  const top = 1.5 / (0.1 * Math.sqrt(2 * Math.PI));
  expect(support(1)[1]).toBeCloseTo(Math.log(0.02 + 0.98 * top), 6);
  // half way it is 2.5 standard deviations from both
  const between = Math.log(0.02 + 0.98 * top * Math.exp(-0.5 * 2.5 ** 2));
  for (const log of support(0.75)) expect(log).toBeCloseTo(between, 6);
});

test('a range that does not begin at zero is as wide as from its low to its high', () => {
  const shifted = { ...reading, wild: { ...reading.wild, low: 0.2, high: 1.8 } };
  const top = 1.6 / (0.1 * Math.sqrt(2 * Math.PI));
  expect(logSupportOfReading(shifted, 1)[1]).toBeCloseTo(Math.log(0.02 + 0.98 * top), 10);
  expect([...logSupportOfReading(shifted, 0.1)]).toEqual([0, 0]);
});

test('a gamma has its shape: of shape four and mean 0.2, at 0.2, 4^4 e^-4 / (3! 0.2)', () => {
  const gamma = {
    ...reading,
    distributions: [{ ...one, family: 'gamma', id: 'g', mean: 0.2, shape: 4, sd: undefined }],
  } as unknown as MeasuredReading;
  const density = (4 ** 4 * Math.exp(-4)) / (6 * 0.2);
  expect(logSupportOfReading(gamma, 0.2)[0]).toBeCloseTo(Math.log(0.02 + 0.98 * 1.5 * density), 6);
});
