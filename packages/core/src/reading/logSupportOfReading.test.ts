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
