import { compileModel, advise, beliefOf } from '@faultodds/core';
import { expect, test } from 'vitest';
import { smallModel, uncheckedModel } from '../fixtures/smallModel.ts';

// Ross S.M., A First Course in Probability / Introduction to Probability Models: two possible causes of a breakdown, which to check
// first; special case of Kadane & Simon (1977). Problem seen in a stored public copy, values recomputed. Check C1. Tolerance 1e-9.
const found = { yes: 1, no: 0 };
const not = { yes: 0, no: 1 };

test('checking the dearer repair first costs 156, the cheaper one first 157.2 (C1)', () => {
  // a check is an opening: once open, the repair behind it costs only itself
  const compiled = compileModel(
    uncheckedModel({
      causes: { one: 0.4, two: 0.6 },
      labourPerHour: 60,
      access: { 'one-open': { minutes: 10 }, 'two-open': { minutes: 12 } },
      tests: {
        'check-one': { p: { one: found, else: not }, access: 'one-open' },
        'check-two': { p: { two: found, else: not }, access: 'two-open' },
      },
      repairs: {
        'repair-one': { cures: { one: 1 }, minutes: 60, access: ['one-open'] },
        'repair-two': { cures: { two: 1 }, minutes: 212, access: ['two-open'] },
      },
      referralFee: 1e6,
    }),
  );
  const advice = advise(compiled, beliefOf(compiled, { context: {}, observations: [] }));
  const costWith = (id: string) => advice.tests.find((one) => one.test === id)?.expectedCostWith.amount;
  expect(costWith('check-one')).toBeCloseTo(157.2, 9);
  expect(costWith('check-two')).toBeCloseTo(156, 9);
  expect(advice.best).toMatchObject({ kind: 'test', test: 'check-two' });
});

test('the order depends on check cost over probability alone (C1)', () => {
  // a cost paid whichever order is used drops out: only the checks are left, 16 against 17.2
  const compiled = compileModel(
    smallModel({
      causes: { one: 0.4, two: 0.6 },
      repairs: {
        'try-one': { cures: { one: 1 }, parts: 10 },
        'try-two': { cures: { two: 1 }, parts: 12 },
      },
      referralFee: 1e6,
    }),
  );
  const { repairNow } = advise(compiled, beliefOf(compiled, { context: {}, observations: [] }));
  expect(repairNow.steps.map((step) => step.repair)).toEqual(['try-two', 'try-one']);
  expect(repairNow.expectedCost.amount).toBeCloseTo(16, 9);
});
