import { describe, expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { compileModel } from '../compiled/compileModel.ts';
import type { Model } from '../model/model.ts';
import { contextEffects } from './contextEffects.ts';
import { contextPrior } from './contextPrior.ts';

const about = (best: number) => ({ best, low: best, high: best, ess: 1, source: 'judgement' });

/** The pump, asked about its age: two answers that make the motor 20 and 9 times likelier. */
function asked(part: Partial<Model> = {}): Model {
  const pump = pumpModel();
  const question = (id: string, multiplier: number) => ({
    id,
    label: id,
    question: id,
    values: [{ id: 'yes', label: 'yes', why: 'wear', multipliers: { 'motor-worn': about(multiplier) } }],
  });
  return {
    ...pump,
    context: [...pump.context, question('old', 20), question('loud', 9), question('oiled', 0.001)],
    ...part,
  };
}
const oddsOfMotor = (model: Model, context: Record<string, string>) => {
  const prior = contextPrior(compileModel(model), context);
  return prior[1]! / prior[2]!; // against the hose, which nothing multiplies
};
const plain = 150 / 250;

test('answers multiply', () => {
  expect(oddsOfMotor(asked(), { old: 'yes' })).toBeCloseTo(20 * plain, 12);
  expect(oddsOfMotor(asked(), {})).toBeCloseTo(plain, 12);
});

test('the product is capped from above and from below, because answers overlap', () => {
  expect(oddsOfMotor(asked(), { old: 'yes', loud: 'yes' })).toBeCloseTo(50 * plain, 12);
  expect(oddsOfMotor(asked(), { oiled: 'yes' })).toBeCloseTo(0.02 * plain, 12);
  expect(
    oddsOfMotor(asked({ contextCap: { low: 0.001, high: 1000, ess: 1, source: 'judgement' } }), {
      old: 'yes',
      loud: 'yes',
    }),
  ).toBeCloseTo(180 * plain, 12);
});

test('the cap is on the product, not on each answer: what one raises another may lower', () => {
  expect(oddsOfMotor(asked(), { old: 'yes', loud: 'yes', oiled: 'yes' })).toBeCloseTo(20 * 9 * 0.001 * plain, 12);
});

test('what is ruled out by definition is not rescued by the cap', () => {
  expect(contextPrior(compileModel(asked()), { 'suction-hose': 'none' })[2]).toBe(0);
});

test('a cause that needs hardware waits for it to be stated', () => {
  const model = asked({
    causes: asked().causes.map((one) => (one.id === 'clogged' ? { ...one, requires: { filter: 'fitted' } } : one)),
  });
  expect(contextPrior(compileModel(model), {})[3]).toBe(0);
  expect(contextPrior(compileModel(model), { filter: 'none' })[3]).toBe(0);
  expect(contextPrior(compileModel(model), { filter: 'fitted' })[3]).toBeGreaterThan(0);
});

test('it sums to one; all zero when nothing is left', () => {
  const compiled = compileModel(asked());
  expect(contextPrior(compiled, { old: 'yes', filter: 'fitted' }).reduce((a, b) => a + b)).toBeCloseTo(1, 12);
  const nothing = compileModel(asked({ causes: asked().causes.map((one) => ({ ...one, weight: about(0) })) }));
  expect([...contextPrior(nothing, {})]).toEqual([0, 0, 0, 0, 0]);
});

describe('what each answer changed', () => {
  const compiled = compileModel(asked());

  test('is told with the multiplier and the prior without and with it', () => {
    const [effect] = contextEffects(compiled, { old: 'yes' });
    expect(effect).toMatchObject({ feature: 'old', value: 'yes', causesIn: [], causesOut: [], testsIn: [] });
    expect(effect!.causes).toEqual([
      expect.objectContaining({
        cause: 'motor-worn',
        priorWithout: expect.closeTo(0.15, 12),
        priorWith: expect.closeTo((20 * 150) / (850 + 20 * 150), 12),
      }),
    ]);
  });

  test('names what it rules out, and the tests it brings', () => {
    const [none, fitted] = contextEffects(compiled, { 'suction-hose': 'none', filter: 'fitted' });
    expect(none!.causesOut).toEqual(['hose-leak']);
    expect(fitted!.testsIn).toEqual(['filter-look']);
  });

  test('leaves out what the model does not know', () => {
    expect(contextEffects(compiled, { colour: 'red', old: 'perhaps' })).toEqual([]);
  });
});
