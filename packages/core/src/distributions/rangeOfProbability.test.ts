import { describe, expect, test } from 'vitest';
import { betaQuantile } from './betaQuantile.ts';
import { rangeOfProbability } from './rangeOfProbability.ts';

// Closed forms: Beta(1, b) has quantile 1 - (1 - q)^(1/b), Beta(a, 1) has q^(1/a). Tolerance 1e-7, what the library holds.
describe('quantiles of a Beta distribution', () => {
  test.each([
    [0.05, 1, 19, 1 - 0.95 ** (1 / 19)],
    [0.95, 1, 19, 1 - 0.05 ** (1 / 19)],
    [0.5, 4, 1, 0.5 ** (1 / 4)],
    [0.3, 1, 1, 0.3],
    [0.5, 7, 7, 0.5],
  ])('%d of Beta(%d, %d) is %d', (q, a, b, expected) => {
    expect(Math.abs(betaQuantile(q, a, b) - expected)).toBeLessThan(1e-7);
  });
});

describe('range of a probability worth some cases', () => {
  test('holds the probability and narrows with more cases', () => {
    let width = Infinity;
    for (const ess of [2, 8, 20, 100, 1000]) {
      const [low, high] = rangeOfProbability(0.3, ess);
      expect(low).toBeLessThan(0.3);
      expect(high).toBeGreaterThan(0.3);
      expect(high - low).toBeLessThan(width);
      width = high - low;
    }
  });

  test('mirrors: the range of the complement is the complement of the range', () => {
    const [low, high] = rangeOfProbability(0.2, 15);
    const [otherLow, otherHigh] = rangeOfProbability(0.8, 15);
    expect(otherLow).toBeCloseTo(1 - high, 6);
    expect(otherHigh).toBeCloseTo(1 - low, 6);
  });

  test('what is certain, or worth nothing, has no range', () => {
    expect(rangeOfProbability(0, 20)).toEqual([0, 0]);
    expect(rangeOfProbability(1, 20)).toEqual([1, 1]);
    expect(rangeOfProbability(0.4, 0)).toEqual([0.4, 0.4]);
  });
});
