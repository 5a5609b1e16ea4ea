import { describe, expect, test } from 'vitest';
import { deepFreeze } from '../../../../tests/fixtures/deepFreeze.ts';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { results } from '../../../../tests/fixtures/results.ts';
import { smallModel } from '../../../../tests/fixtures/smallModel.ts';
import type { Observation } from '../evidence/observation.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import { informationGain } from '../belief/informationGain.ts';
import { advise } from './advise.ts';

const compiled = compileModel(parseModel(pumpModel()));
const adviceAfter = (observations: readonly Observation[], circumstances = {}, context = {}) =>
  advise(compiled, beliefOf(compiled, { context, observations }), deepFreeze(circumstances));

describe('repair order', () => {
  test('most likely first is dearer than probability over cost', () => {
    const model = smallModel({
      causes: { dear: 0.6, cheap: 0.4 },
      repairs: { 'mend-dear': { cures: { dear: 1 }, parts: 100 }, 'mend-cheap': { cures: { cheap: 1 }, parts: 10 } },
      referralFee: 1e6,
    });
    const ready = compileModel(model);
    const { repairNow } = advise(ready, beliefOf(ready, { context: {}, observations: [] }));
    expect(repairNow.steps.map(({ repair }) => repair)).toEqual(['mend-cheap', 'mend-dear']);
    expect(repairNow.expectedCost.amount).toBeCloseTo(10 + 0.6 * 100, 9); // the other way round: 100 + 0.4 x 10
  });

  test('steps say how likely each is reached and cures; with the referral it adds up to one', () => {
    const { repairNow } = adviceAfter([]);
    const cures = repairNow.steps.reduce((sum, step) => sum + step.cures, 0);
    expect(cures + repairNow.referred).toBeCloseTo(1, 12);
    expect(repairNow.steps[0]!.reached).toBe(1);
    for (let at = 1; at < repairNow.steps.length; at += 1) {
      const [before, after] = [repairNow.steps[at - 1]!, repairNow.steps[at]!];
      expect(after.reached).toBeCloseTo(before.reached - before.cures, 12);
    }
  });

  test('a repair that failed is not proposed again', () => {
    const first = adviceAfter([]).repairNow.steps[0]!.repair;
    const { repairNow } = adviceAfter([{ kind: 'repair-tried', id: 'x', repair: first, cured: false }]);
    expect(repairNow.steps.map(({ repair }) => repair)).not.toContain(first);
  });

  test('a repair that seems to have cured is proved, until the fault comes back', () => {
    const repair = adviceAfter([]).repairNow.steps[0]!.repair;
    const cured: Observation = { kind: 'repair-tried', id: 'x', repair, cured: true };
    const { best, proof, expectedCost } = adviceAfter([cured]);
    expect(best).toMatchObject({ kind: 'prove', repair });
    expect(proof).toMatchObject({ repair, check: compiled.model.verification.checks.at(-1) });
    const { minutes } = proof!.check;
    expect(expectedCost.amount).toBeCloseTo((minutes.best * compiled.model.labourPerHour.best) / 60, 9);
    const back = adviceAfter([cured, ...results(['hum', 'silent'])]);
    expect(back.best.kind).not.toBe('prove');
    expect(back.proof).toBeUndefined();
  });

  test('nothing worth trying is referred', () => {
    const model = smallModel({
      causes: { a: 1 },
      repairs: { mend: { cures: { a: 0.01 }, parts: 500 } },
      referralFee: 10,
    });
    const ready = compileModel(model);
    const advice = advise(ready, beliefOf(ready, { context: {}, observations: [] }));
    expect(advice.best).toMatchObject({ kind: 'refer' });
    expect(advice.repairNow).toMatchObject({ steps: [], referred: 1, referralFee: { amount: 10 } });
  });
});

describe('tests', () => {
  test('best first, by what they save beyond their price', () => {
    const { tests, best, expectedCost } = adviceAfter([]);
    const values = tests.map(({ netValue }) => netValue.amount);
    expect(values).toEqual(values.toSorted((a, b) => b - a));
    expect(best).toMatchObject({ kind: 'test', test: tests[0]!.test });
    expect(expectedCost).toEqual(tests[0]!.expectedCostWith);
  });

  test('outcomes come with their probability and what is believed then', () => {
    const belief = beliefOf(compiled, { context: {}, observations: [] });
    for (const { test: id, outcomes } of advise(compiled, belief).tests) {
      expect(outcomes.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 12);
      for (const { outcome, probability, ranking } of outcomes) {
        expect(probability).toBeCloseTo(belief.predictive[id]![outcome]!, 12);
        expect(ranking.length).toBeLessThanOrEqual(5);
        expect(ranking[0]!.probability).toBeGreaterThanOrEqual(ranking.at(-1)!.probability);
      }
    }
  });

  test('a free test that tells nothing is worth nothing and is not proposed', () => {
    const ready = compileModel(
      smallModel({
        causes: { a: 0.7, b: 0.3 },
        repairs: { mend: { cures: { a: 0.9, b: 0.8 }, parts: 5 } },
        referralFee: 9,
      }),
    );
    const advice = advise(ready, beliefOf(ready, { context: {}, observations: [] }));
    expect(advice.tests[0]!.grossValue.amount).toBeCloseTo(0, 12);
    expect(advice.tests[0]!.informationGainBits).toBeCloseTo(0, 12);
    expect(advice.best).toMatchObject({ kind: 'repair', repair: 'mend' });
  });

  test('cautions are those of the test and of what must be opened for it', () => {
    const look = adviceAfter([]).tests.find((one) => one.test === 'fuse-look')!;
    expect(look.cautions).toEqual(['mains']);
    expect(adviceAfter([]).repairNow.steps.every((step) => step.cautions.includes('mains'))).toBe(true);
  });
});

describe('what is not proposed says why', () => {
  test('on record, not on this pump, no equipment', () => {
    const { notNow, tests } = adviceAfter(results(['hum', 'hums']), { equipment: ['lamp'] });
    expect(notNow).toMatchObject([
      { test: 'hum', reason: 'already-done', missing: [] },
      { test: 'vacuum', reason: 'equipment', missing: ['gauge'] },
      { test: 'filter-look', reason: 'not-applicable', missing: ['filter:fitted'] },
    ]);
    expect(tests.map(({ test: id }) => id).sort()).toEqual(['fuse-look', 'wheel-look']);
  });

  test('another test answered it', () => {
    const pump = pumpModel();
    const paired = compileModel(
      parseModel({
        ...pump,
        dependentPairs: [{ a: 'wheel-look', b: 'vacuum', kind: 'same-question', shared: 'flow', note: 'either' }],
      }),
    );
    const belief = beliefOf(paired, { context: {}, observations: results(['vacuum', 'weak']) });
    expect(advise(paired, belief).notNow).toContainEqual(
      expect.objectContaining({
        test: 'wheel-look',
        reason: 'same-question',
        missing: ['vacuum'],
      }),
    );
  });
});

describe('information', () => {
  // Shannon 1948: a fair coin tells one bit, a binary channel of error e one bit less the entropy of e
  test('of a perfect test between two even causes is one bit', () => {
    expect(informationGain(Float64Array.of(0.5, 0.5), Float64Array.of(1, 0, 0, 1), Float64Array.of(0.5, 0.5))).toBe(1);
  });

  test('of a noisy one is less, of a blind one nothing', () => {
    const entropy = -(0.1 * Math.log2(0.1) + 0.9 * Math.log2(0.9));
    expect(
      informationGain(Float64Array.of(0.5, 0.5), Float64Array.of(0.9, 0.1, 0.1, 0.9), Float64Array.of(0.5, 0.5)),
    ).toBeCloseTo(1 - entropy, 12);
    expect(
      informationGain(Float64Array.of(0.2, 0.8), Float64Array.of(0.3, 0.7, 0.3, 0.7), Float64Array.of(0.3, 0.7)),
    ).toBeCloseTo(0, 12);
  });
});
