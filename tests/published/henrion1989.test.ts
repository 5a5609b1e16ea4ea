import { describe, expect, test } from 'vitest';
import { chanceOf, chanceOfEvidence, yesNoNetwork } from './yesNo.ts';

/** P(effect | causes): leaky noisy-OR table for `yesNoNetwork`. */
function noisyOr(leak: number, strengths: readonly number[]): number[] {
  return Array.from({ length: 2 ** strengths.length }, (_, absent) => {
    const survives = strengths.map((c, at) => (((absent >> (strengths.length - 1 - at)) & 1) === 0 ? 1 - c : 1));
    return 1 - survives.reduce((product, q) => product * q, 1 - leak);
  });
}

// Leaky noisy-OR: Henrion M. (1989) Some practical issues in constructing belief networks, UAI 3:161-173; the two conventions: Diez F.J.
// (1993) Parameter adjustment in Bayes networks, UAI 9:99-105. Recomputed. Check B7. Tolerance 1e-12.
test('leak 0.05 and strengths 0.7, 0.4: both causes 0.829, the first alone 0.715 (B7)', () => {
  const network = yesNoNetwork([
    ['first', [], [0.5]],
    ['second', [], [0.5]],
    ['effect', ['first', 'second'], noisyOr(0.05, [0.7, 0.4])],
  ]);
  expect(chanceOf(network, 'effect', { first: 'yes', second: 'yes' })).toBeCloseTo(0.829, 12);
  const alone = chanceOf(network, 'effect', { first: 'yes', second: 'no' });
  expect(alone).toBeCloseTo(0.715, 12);
  // an expert who states 0.715 with the leak included means a bare strength of 0.7
  expect(1 - (1 - alone) / (1 - 0.05)).toBeCloseTo(0.7, 12);
});

// Two-level noisy-OR network: model class of Heckerman D. (1989) A tractable inference algorithm for diagnosing multiple diseases, UAI
// 5:163-171; this instance constructed and enumerated. Check B8. Tolerance 1e-12.
describe('three causes, three findings (B8)', () => {
  const strengths = [
    [0.8, 0.3, 0],
    [0.6, 0.9, 0.2],
    [0, 0.5, 0.7],
  ];
  const leaks = [0.01, 0.02, 0.05];
  const causes = ['c1', 'c2', 'c3'];
  const network = yesNoNetwork([
    ['c1', [], [0.02]],
    ['c2', [], [0.01]],
    ['c3', [], [0.05]],
    ...strengths.map((row, at) => [`f${at + 1}`, causes, noisyOr(leaks[at]!, row)] as const),
  ]);
  const seen = { f1: 'yes', f2: 'yes', f3: 'no' };

  test('P(findings) is 0.010394', () => {
    expect(chanceOfEvidence(network, seen)).toBeCloseTo(0.0103939810088968, 14);
  });
  test.each([
    ['c1', 0.8605613708261114],
    ['c2', 0.12701788624077215],
    ['c3', 0.0198315709005397],
  ])('P(%s | findings) is %d', (cause, p) => {
    expect(chanceOf(network, cause, seen)).toBeCloseTo(p, 12);
  });
});
