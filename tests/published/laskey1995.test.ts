import { sensitivityFunction } from '@faultodds/inference/analysis';
import { describe, expect, test } from 'vitest';
import { chanceOf, chanceOfEvidence, yesNoNetwork } from './yesNo.ts';

// One-way sensitivity of a posterior is a quotient of two linear functions: Laskey K.B. (1995) IEEE Trans. SMC 25(6):901-909; Coupe V.M.H.,
// van der Gaag L.C. (2002) Annals of Mathematics and AI 36:323-356; Kjaerulff U., van der Gaag L.C. (2000) UAI 16. Form seen in stored
// abstracts, coefficients recomputed on the burglar alarm. Checks D1 and D2. Tolerance 1e-9.
const alarmWith = (burglary: number, falseAlarm: number) =>
  yesNoNetwork([
    ['burglary', [], [burglary]],
    ['earthquake', [], [0.002]],
    ['alarm', ['burglary', 'earthquake'], [0.95, 0.94, 0.29, falseAlarm]],
    ['john', ['alarm'], [0.9, 0.05]],
    ['mary', ['alarm'], [0.7, 0.01]],
  ]);
const network = alarmWith(0.001, 0.001);
const calls = { john: 'yes', mary: 'yes' };
const query = { variable: 'burglary', state: 'yes' };
// our coefficients are divided by P(evidence) at the present value
const scale = chanceOfEvidence(network, calls);

describe('P(burglary | both call) as a function of P(burglary) = t (D1)', () => {
  const found = sensitivityFunction(network, calls, query, { variable: 'burglary', state: 'yes' });
  const value = (t: number) =>
    (found.numerator.slope * t + found.numerator.intercept) /
    (found.denominator.slope * t + found.denominator.intercept);

  test('is k1 t over (k1 - k0) t + k0', () => {
    const [k1, k0] = [0.5922425899999999, 0.0014933510000000002];
    expect(found.at).toBe(0.001);
    expect(found.numerator.slope * scale).toBeCloseTo(k1, 10);
    expect(found.numerator.intercept * scale).toBeCloseTo(0, 12);
    expect(found.denominator.slope * scale).toBeCloseTo(k1 - k0, 10);
    expect(found.denominator.intercept * scale).toBeCloseTo(k0, 12);
  });

  test('gives the posterior of networks with other numbers', () => {
    for (const t of [0.0001, 0.001, 0.01, 0.3])
      expect(value(t)).toBeCloseTo(chanceOf(alarmWith(t, 0.001), 'burglary', calls), 10);
  });

  test('rises by 203.6 per unit at 0.001 and passes one half at 0.002515', () => {
    const step = 1e-7;
    expect((value(0.001 + step) - value(0.001 - step)) / (2 * step)).toBeCloseTo(203.62182517520046, 3); // by differences
    expect(found.valueForPosterior(0.5)).toBeCloseTo(0.0025151770288401663, 10);
  });
});

describe('P(burglary | both call) as a function of the false-alarm rate t (D2)', () => {
  const parameter = { variable: 'alarm', state: 'yes', given: { burglary: 'no', earthquake: 'no' } };
  const found = sensitivityFunction(network, calls, query, parameter);

  test('is 0.00059224 over 0.62761 t + 0.0014565', () => {
    expect(found.numerator.slope * scale).toBeCloseTo(0, 12);
    expect(found.numerator.intercept * scale).toBeCloseTo(0.0005922425899999999, 12);
    expect(found.denominator.slope * scale).toBeCloseTo(0.6276127589999999, 9);
    expect(found.denominator.intercept * scale).toBeCloseTo(0.00145648748, 12);
  });

  test('no false-alarm rate lifts it to one half: there is no value, not a wrong one', () => {
    expect(found.valueForPosterior(0.5)).toBeNull();
    expect(chanceOf(alarmWith(0.001, 0), 'burglary', calls)).toBeCloseTo(0.406624, 6); // its maximum, at 0
  });
});

// Chan H., Darwiche A. (2005) A distance measure for bounding probabilistic belief change, Int. J. Approximate Reasoning 38:149-174:
// definition from memory, recomputed. We have no distance; the bound is held on our posteriors. Check D3. Tolerance 1e-9.
test('doubling P(burglary) moves the odds of any belief by a factor of 2.002 at most, and of a burglary by exactly that (D3)', () => {
  const bound = Math.exp(0.6941486828970347);
  const other = alarmWith(0.002, 0.001);
  const odds = (p: number) => p / (1 - p);
  const factor = (variable: string) =>
    odds(chanceOf(other, variable, calls)) / odds(chanceOf(network, variable, calls));
  expect(odds(chanceOf(network, 'burglary', calls))).toBeCloseTo(0.3969833116430265, 9);
  expect(odds(chanceOf(other, 'burglary', calls))).toBeCloseTo(0.7947621810248168, 9);
  expect(factor('burglary')).toBeCloseTo(bound, 9);
  for (const variable of ['earthquake', 'alarm']) {
    expect(factor(variable)).toBeLessThan(bound);
    expect(factor(variable)).toBeGreaterThan(1 / bound);
  }
});
