// Values of published-checks E2 (30-digit arithmetic; definitions: Abramowitz & Stegun 1964 ch. 6 and 26, NIST DLMF ch. 8) and of scipy
// 1.17 where jstat 1.9.6 fails. Tolerance: 1e-12 relative, as the reference states.
import { describe, expect, test } from 'vitest';
import { distributionFunction, logDensity } from './logDensity.ts';
import { logGamma } from './logGamma.ts';
import { logNegativeBinomial } from './logNegativeBinomial.ts';
import { logPoisson } from './logPoisson.ts';
import { normalCdf } from './normalCdf.ts';
import { regularizedBeta } from './regularizedBeta.ts';
import { regularizedGamma } from './regularizedGamma.ts';

const expectRelative = (found: number, expected: number, relative = 1e-12): void =>
  expect(Math.abs(found / expected - 1), `${found} against ${expected}`).toBeLessThanOrEqual(relative);

describe('published values, 1e-12 relative', () => {
  test.each([
    ['log gamma at 1/2', () => logGamma(0.5), 0.5723649429247001],
    ['log gamma at 171.5', () => logGamma(171.5), 709.1431630309282],
    ['log gamma at 171', () => logGamma(171), 706.5730622457874],
    ['normal at 1', () => normalCdf(1), 0.8413447460685429],
    ['normal at 1.96', () => normalCdf(1.96), 0.9750021048517795],
    ['normal at -6', () => normalCdf(-6), 9.86587645037698e-10],
    ['beta at 0.3 (2, 5)', () => regularizedBeta(0.3, 2, 5), 0.579825],
    ['beta at 0.5 (0.5, 0.5)', () => regularizedBeta(0.5, 0.5, 0.5), 0.5],
    ['beta at 0.9 (20, 2)', () => regularizedBeta(0.9, 20, 2), 0.36472996377170785],
    ['gamma at 2 (3, rate 1)', () => regularizedGamma(3, 2).lower, 0.32332358381693654],
    ['gamma at 1 (0.5, rate 2)', () => regularizedGamma(0.5, 2).lower, 0.9544997361036416],
    ['gamma at 30 (33, rate 1)', () => regularizedGamma(33, 30).lower, 0.31545875028785453],
    ['Poisson 3 at mean 2.5', () => Math.exp(logPoisson(3, 2.5)), 0.21376301724973645],
    ['Poisson at most 3 at mean 2.5', () => regularizedGamma(4, 2.5).upper, 0.7575761331330659],
    ['Poisson none at mean 3', () => Math.exp(logPoisson(0, 3)), 0.049787068367863944],
    ['Poisson at most 10 at mean 10', () => regularizedGamma(11, 10).upper, 0.5830397501929855],
    ['negative binomial 4 (2.5, 0.4)', () => Math.exp(logNegativeBinomial(4, 2.5, 0.4)), 0.1183387545988211],
    [
      'gamma through the family',
      () => distributionFunction({ family: 'gamma', mean: 3, shape: 3 }, 2),
      0.32332358381693654,
    ],
  ])('%s', (_, found, expected) => expectRelative(found(), expected));
});

describe('where jstat 1.9.6 fails, held to the digits scipy 1.17 prints', () => {
  test.each([
    ['normal tail at -8', () => normalCdf(-8), 6.221e-16, 1e-4],
    ['normal tail at -10', () => normalCdf(-10), 7.6199e-24, 1e-5],
    ['Poisson 200 at mean 180', () => Math.exp(logPoisson(200, 180)), 0.009651740527, 1e-10],
    ['negative binomial 10 (0.5, 0.1)', () => Math.exp(logNegativeBinomial(10, 0.5, 0.1)), 0.0194278048, 1e-8],
    ['negative binomial 0 (0.1, 0.9)', () => Math.exp(logNegativeBinomial(0, 0.1, 0.9)), 0.9895192582, 1e-10],
    ['beta at 0.5 (1e5, 1e5)', () => regularizedBeta(0.5, 1e5, 1e5), 0.5, 1e-9],
  ])('%s', (_, found, expected, relative) => expectRelative(found(), expected, relative));
});

describe('densities', () => {
  const families = [
    { family: 'normal', mean: 0.96, sd: 0.035 },
    { family: 'lognormal', mean: 8, sd: 4 },
    { family: 'gamma', mean: 3, shape: 2.5 },
  ] as const;

  test.each(families)('$family, cut off, integrates to one', (distribution) => {
    const [low, high, steps] = [0, 30, 300_000];
    let sum = 0;
    for (let at = 0; at < steps; at += 1) {
      sum += Math.exp(logDensity(distribution, low + ((at + 0.5) * (high - low)) / steps, low, high));
    }
    expect((sum * (high - low)) / steps).toBeCloseTo(1, 6);
  });

  test.each(families)('$family has the mean it names', (distribution) => {
    const [high, steps] = [400, 400_000];
    let mean = 0;
    for (let at = 0; at < steps; at += 1) {
      const x = ((at + 0.5) * high) / steps;
      mean += (x * Math.exp(logDensity(distribution, x, 0, high)) * high) / steps;
    }
    expect(mean).toBeCloseTo(distribution.mean, 3);
  });

  test('a far tail stays finite, outside the range nothing is possible', () => {
    const healthy = { family: 'normal', mean: 0.96, sd: 0.001 } as const;
    expect(logDensity(healthy, 0.01, 0, 1.3)).toBeLessThan(-400_000);
    expect(Number.isFinite(logDensity(healthy, 0.01, 0, 1.3))).toBe(true);
    expect(logDensity(healthy, 1.4, 0, 1.3)).toBe(-Infinity);
  });
});
