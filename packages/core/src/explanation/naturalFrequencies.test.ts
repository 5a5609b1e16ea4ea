import fc from 'fast-check';
import { expect, test } from 'vitest';
import { naturalFrequencies } from './naturalFrequencies.ts';

test('the mammography problem in whole people: 8 ill and 95 well of 1000 test positive', () => {
  // Gigerenzer & Hoffrage 1995, Psychological Review 102(4), after Eddy 1982: 1 %, 80 %, 9.6 %; told as 8 and 95
  const [ill, hit, falseAlarm] = [0.01, 0.8, 0.096];
  expect(
    naturalFrequencies({
      illPositive: ill * hit,
      illNegative: ill * (1 - hit),
      wellPositive: (1 - ill) * falseAlarm,
      wellNegative: (1 - ill) * (1 - falseAlarm),
    }),
  ).toEqual({ illPositive: 8, illNegative: 2, wellPositive: 95, wellNegative: 895 });
});

test('whole cases sum to the whole, and none is off by a whole case', () => {
  const weights = fc.array(fc.double({ min: 1e-9, max: 1, noNaN: true }), { minLength: 1, maxLength: 40 });
  fc.assert(
    fc.property(weights, fc.integer({ min: 1, max: 5000 }), (raw, of) => {
      const total = raw.reduce((sum, value) => sum + value, 0);
      const probabilities = Object.fromEntries(raw.map((value, at) => [`c${at}`, value / total]));
      const whole = naturalFrequencies(probabilities, of);
      expect(Object.values(whole).reduce((sum, value) => sum + value, 0)).toBe(of);
      for (const [id, count] of Object.entries(whole)) {
        expect(Number.isInteger(count)).toBe(true);
        expect(Math.abs(count - probabilities[id]! * of)).toBeLessThan(1);
      }
    }),
    { seed: 20, numRuns: 300 },
  );
});
