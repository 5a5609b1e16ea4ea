// Two event rates, against the exact conditional test of Przyborowski J., Wilenski H. (1940), Homogeneity of results in testing samples from
// Poisson series, Biometrika 31:313-323. The first row is the example of Krishnamoorthy K., Thomson J. (2004), J. Stat. Planning and
// Inference 119:23-35, as the documentation of SciPy's poisson_means_test prints it (one-sided 0.125); the others are recomputed values of
// the same test (published check E8). Tolerances: 1e-12 relative for the test itself, 1e-4 where a limit stands in for it.
import { describe, expect, test } from 'vitest';
import { compileModel, parseModel, type Model } from '@faultodds/core';
import { conditionalRateTest, parseReading, readingLikelihood } from '@faultodds/core/readings';
import { misfire } from '@faultodds/misfire';

const CASES = [
  { after: 0, exposureAfter: 100, before: 3, exposureBefore: 100, oneSided: 0.125 },
  { after: 0, exposureAfter: 20, before: 6, exposureBefore: 20, oneSided: 0.015625 },
  { after: 1, exposureAfter: 30, before: 8, exposureBefore: 30, oneSided: 0.01953125 },
  { after: 2, exposureAfter: 60, before: 12, exposureBefore: 30, oneSided: 8.216653714460629e-5 },
  { after: 0, exposureAfter: 5, before: 40, exposureBefore: 60, oneSided: 0.040692629066933064 },
];

test.each(CASES)('$after in $exposureAfter after $before in $exposureBefore: $oneSided', (given) => {
  const found = conditionalRateTest(
    { events: given.after, exposure: given.exposureAfter },
    { events: given.before, exposure: given.exposureBefore },
  );
  expect(Math.abs(found / given.oneSided - 1)).toBeLessThan(1e-12);
});

/** The misfire model with the prior of the rates, the loosening between two drives and the wild share taken out. */
function withoutPriorKnowledge(model: Model): Model {
  return {
    ...model,
    tests: model.tests.map((one) => ({
      ...one,
      ...(one.readings === undefined
        ? {}
        : {
            readings: one.readings.map((reading) =>
              reading.kind === 'part-counts'
                ? {
                    ...reading,
                    rates: {
                      healthy: { ...reading.rates.healthy, mean: 1e-9 },
                      fault: { ...reading.rates.fault, mean: 500, shape: 1e-7 },
                    },
                    carriesOver: { ...reading.carriesOver, shape: 1e12 },
                    wild: { ...reading.wild, share: 1e-12 },
                  }
                : reading,
            ),
          }),
    })),
  };
}

const given = parseModel(misfire);
const entered = (one: (typeof CASES)[number]): unknown => ({
  kind: 'part-counts',
  before: { suspect: one.before, exposure: { amount: one.exposureBefore, unit: 'firings' } },
  after: { suspect: one.after, exposure: { amount: one.exposureAfter, unit: 'firings' } },
});
const staysOverGone = (model: Model, one: (typeof CASES)[number]): { ratio: number; saysLittle: boolean } => {
  const compiled = compileModel(model);
  const said = readingLikelihood(compiled, 'plug-replaced', parseReading(compiled, 'plug-replaced', entered(one)));
  const likelihood = (id: string): number => said.support.find((support) => support.id === id)!.likelihood;
  return { ratio: likelihood('misfire-stays') / likelihood('misfire-gone'), saysLittle: said.saysLittle };
};

describe('counts before and after a part was replaced', () => {
  // nothing counted afterwards: P(0 | the rate stayed) is the conditional test itself
  test.each(CASES.filter(({ after }) => after === 0))(
    'with nothing known beforehand, $before in $exposureBefore then none in $exposureAfter speaks against "stays" by $oneSided',
    (one) => {
      expect(Math.abs(staysOverGone(withoutPriorKnowledge(given), one).ratio / one.oneSided - 1)).toBeLessThan(1e-4);
    },
  );

  test('with what the model knows of rates it is of the same size, and rather more careful, since two drives are never the same', () => {
    for (const one of CASES.filter(({ after }) => after === 0)) {
      const { ratio } = staysOverGone(given, one);
      expect(ratio / one.oneSided).toBeGreaterThan(1 / 2);
      expect(ratio / one.oneSided).toBeLessThan(5);
    }
  });

  test('counts too few to say anything are said to be', () => {
    const few = { after: 0, exposureAfter: 20, before: 2, exposureBefore: 100, oneSided: NaN };
    expect(staysOverGone(given, few).saysLittle).toBe(true);
    expect(conditionalRateTest({ events: 0, exposure: 20 }, { events: 2, exposure: 100 })).toBeGreaterThan(0.3);
    const enough = { after: 0, exposureAfter: 2000, before: 40, exposureBefore: 2000, oneSided: NaN };
    expect(staysOverGone(given, enough).saysLittle).toBe(false);
  });
});

describe('counts of two cylinders before and after a swap', () => {
  const compiled = compileModel(given);
  const swap = (before: [number, number], after: [number, number], exposure = 2000): Record<string, number> => {
    const drive = { amount: exposure, unit: 'firings' };
    const reading = parseReading(compiled, 'coil-swap', {
      kind: 'part-counts',
      before: { suspect: before[0], partner: before[1], exposure: drive },
      after: { suspect: after[0], partner: after[1], exposure: drive },
    });
    const { support } = readingLikelihood(compiled, 'coil-swap', reading);
    return Object.fromEntries(support.map(({ id, likelihood }) => [id, likelihood]));
  };

  test.each([
    [[240, 0], [1, 180], 'follows'],
    [[240, 0], [180, 2], 'stays'],
    [[240, 0], [0, 0], 'gone-after-refit'],
    [[240, 0], [0, 30], 'follows'],
    [[240, 3], [30, 1], 'stays'],
  ] as const)('%j, then %j: %s', (before, after, expected) => {
    const support = swap([...before], [...after]);
    expect(support[expected]).toBe(1);
    for (const [outcome, likelihood] of Object.entries(support)) {
      if (outcome !== expected) expect(likelihood).toBeLessThan(1 / 3);
    }
  });

  test('a partner that misfired before the swap makes the counts say nothing', () => {
    expect(new Set(Object.values(swap([240, 200], [1, 180])))).toEqual(new Set([1]));
  });

  test('the cylinders exchanged, the outcomes are exchanged', () => {
    const [moved, stayed] = [swap([60, 0], [2, 45]), swap([60, 0], [45, 2])];
    expect(moved['follows']).toBeCloseTo(stayed['stays']!, 12);
    expect(moved['gone-after-refit']).toBeCloseTo(stayed['gone-after-refit']!, 12);
  });
});
