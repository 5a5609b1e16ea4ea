// Published checks E3, E4, E7, E8 (sources beside each). Tolerances as stated there.
import { describe, expect, test } from 'vitest';
import { conditionalRateTest } from './conditionalRateTest.ts';
import { eventRate, updateEventRate } from './eventRate.ts';
import { logPredictiveCount } from './logPredictiveCount.ts';
import { probabilityRateAbove } from './probabilityRateAbove.ts';
import { probabilityRateLower } from './probabilityRateLower.ts';

// Gelman et al., Bayesian Data Analysis (3rd ed. 2013), sec. 2.6, asthma mortality: the book prints 0.86, 0.30, 1.32, 0.93. Tolerance 1e-10.
test('a death rate after 3 events in 2 years, and after 30 in 20', () => {
  const prior = { shape: 3, exposure: 5 };
  const few = updateEventRate(prior, { events: 3, exposure: 2 });
  expect(few).toEqual({ shape: 6, exposure: 7 });
  expect(few.shape / few.exposure).toBeCloseTo(0.8571428571428571, 10);
  expect(probabilityRateAbove(few, 1)).toBeCloseTo(0.30070827617436097, 10);
  const many = updateEventRate(prior, { events: 30, exposure: 20 });
  expect(many).toEqual({ shape: 33, exposure: 25 });
  expect(probabilityRateAbove(many, 1)).toBeCloseTo(0.9285439687599414, 10);
});

// Lomax 1954, JASA 49:847-852. Tolerance 1e-12.
test.each([
  [6.5, 20, 5, 0.23446872155748202],
  [6, 30, 30, 0.015625],
  [1, 10, 190, 0.05],
])('no event: shape %d, exposure %d, ahead %d', (shape, exposure, ahead, expected) => {
  expect(Math.exp(logPredictiveCount({ shape, exposure }, { events: 0, exposure: ahead }))).toBeCloseTo(expected, 12);
});

test('the predictive probabilities of all counts sum to one', () => {
  let sum = 0;
  for (let events = 0; events < 5000; events += 1) {
    sum += Math.exp(logPredictiveCount(eventRate(0.12, 0.8), { events, exposure: 1000 }));
  }
  expect(sum).toBeCloseTo(1, 10);
});

test('no exposure, no event', () => {
  expect(logPredictiveCount(eventRate(1, 1), { events: 0, exposure: 0 })).toBe(0);
  expect(logPredictiveCount(eventRate(1, 1), { events: 1, exposure: 0 })).toBe(-Infinity);
});

// Przyborowski & Wilenski 1940, Biometrika 31:313-323; first row repeated by Krishnamoorthy & Thomson 2004 (published check E7, one-sided),
// the others E8. Order: events after, exposure after, events before, exposure before. Tolerance 1e-12 relative.
const cases = [
  [0, 100, 3, 100, 0.125],
  [0, 20, 6, 20, 0.015625],
  [1, 30, 8, 30, 0.01953125],
  [2, 60, 12, 30, 8.216653714460629e-5],
  [0, 5, 40, 60, 0.040692629066933064],
] as const;

describe('two rates compared', () => {
  test.each(cases)('%d in %d after %d in %d', (after, exposureAfter, before, exposureBefore, expected) => {
    const first = { events: after, exposure: exposureAfter };
    const second = { events: before, exposure: exposureBefore };
    expect(Math.abs(conditionalRateTest(first, second) / expected - 1)).toBeLessThan(1e-12);
    // The conditional test is the Bayesian answer under the priors that favour "not lower" most: a + 1 events after, b before.
    const posterior = probabilityRateLower(
      { shape: after + 1, exposure: exposureAfter },
      { shape: before, exposure: exposureBefore },
    );
    expect(Math.abs((1 - posterior) / expected - 1)).toBeLessThan(1e-10);
  });

  test('nothing counted says nothing', () => {
    expect(conditionalRateTest({ events: 0, exposure: 10 }, { events: 0, exposure: 10 })).toBe(1);
  });
});
