import { compileModel, advise, beliefOf } from '@faultodds/core';
import { describe, expect, test } from 'vitest';
import { results } from '../fixtures/results.ts';
import { uncheckedModel } from '../fixtures/smallModel.ts';

// The oil wildcatter: Raiffa H. (1968) Decision Analysis, Addison-Wesley; figures of Shenoy P.P. (1992) Valuation-based systems for
// Bayesian decision analysis, Operations Research 40:463-484 (tables and the maximum of 22.5 against 20 seen in stored public copies).
// Check C7. Tolerance 1e-9.
//
// In our terms walking away is the referral and drilling a repair for 70. It must gain -70, 50 and 200 against walking away: a referral
// costs 200 and then the job of 70, so drilling spares 270 where it surely succeeds (soaking), 120 where it does in 4 of 9 (wet), as good
// as nothing in a dry hole.
const seismic = { closed: [0.1, 0.3, 0.5], open: [0.3, 0.4, 0.4], diffuse: [0.6, 0.3, 0.1] };
const given = (state: number) => Object.fromEntries(Object.entries(seismic).map(([result, p]) => [result, p[state]!]));
const compiled = compileModel(
  uncheckedModel({
    causes: { dry: 0.5, wet: 0.3, soaking: 0.2 },
    tests: {
      seismic: { p: { dry: given(0), wet: given(1), else: given(2) }, price: 10 },
      oracle: {
        p: {
          dry: { dry: 1, wet: 0, soaking: 0 },
          wet: { dry: 0, wet: 1, soaking: 0 },
          else: { dry: 0, wet: 0, soaking: 1 },
        },
      },
    },
    repairs: { drill: { cures: { dry: 1e-15, wet: 120 / 270, soaking: 1 }, parts: 70 } },
    referralFee: 200,
  }),
);
const walkAway = 270; // what the referral costs, whatever is below
const belief = beliefOf(compiled, { context: {}, observations: [] });
const advice = advise(compiled, belief);
const adviceOn = (id: string) => advice.tests.find((one) => one.test === id)!;

test('drilling without a test is worth 20 (C7)', () => {
  expect(walkAway - advice.repairNow.expectedCost.amount).toBeCloseTo(20, 9);
});

test('perfect information is worth 35 (C7)', () => {
  expect(adviceOn('oracle').grossValue.amount).toBeCloseTo(35, 9);
});

test('the seismic test is worth 12.5, 2.5 more than it costs: 22.5 with it against 20 without (C7)', () => {
  expect(adviceOn('seismic').grossValue.amount).toBeCloseTo(12.5, 9);
  expect(adviceOn('seismic').netValue.amount).toBeCloseTo(2.5, 9);
  expect(walkAway - adviceOn('seismic').expectedCostWith.amount).toBeCloseTo(22.5, 9);
});

describe.each([
  ['closed', 0.24, [0.208333333, 0.375, 0.416666667], 87.5],
  ['open', 0.35, [0.428571429, 0.342857143, 0.228571429], 32.8571429],
  // drilling would lose 30.49: walk away, worth 0
  ['diffuse', 0.41, [0.731707317, 0.219512195, 0.0487804878], 0],
] as const)('after a %s result (C7)', (outcome, probability, posterior, worth) => {
  const forecast = adviceOn('seismic').outcomes.find((one) => one.outcome === outcome)!;

  test(`it comes with probability ${probability} and leaves ${worth}`, () => {
    expect(forecast.probability).toBeCloseTo(probability, 12);
    expect(walkAway - forecast.expectedCost.amount).toBeCloseTo(worth, 7);
  });

  test('posterior, foretold and recorded', () => {
    const recorded = beliefOf(compiled, { context: {}, observations: results(['seismic', outcome]) });
    ['dry', 'wet', 'soaking'].forEach((state, at) => {
      expect(recorded.posterior[state]).toBeCloseTo(posterior[at]!, 9);
      expect(forecast.ranking.find(({ cause }) => cause === state)!.probability).toBeCloseTo(posterior[at]!, 9);
    });
    expect(advise(compiled, recorded).repairNow.steps.map((step) => step.repair)).toEqual(worth > 0 ? ['drill'] : []);
  });
});
