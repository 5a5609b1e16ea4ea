import { describe, expect, test } from 'vitest';
import { smallModel } from '../../../../tests/fixtures/smallModel.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import { compileModel } from '../compiled/compileModel.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import { defaultPrices } from '../cost/defaultPrices.ts';
import { compileCaseProblem } from '../problem/compileCaseProblem.ts';
import { takeAction } from '../problem/takeAction.ts';
import { oneStep } from '../solvers/oneStep.ts';
import { advise } from './advise.ts';
import { repairOrTest } from './repairOrTest.ts';

// A look inside opens the cover, which only the worn part needs; a look outside tells as much and is dearer. A minute costs one unit.
const model = smallModel({
  causes: { worn: 1, loose: 1 },
  labourPerHour: 60,
  access: { cover: { minutes: 10, opensEngine: true } },
  tests: {
    inside: { p: { worn: { yes: 0.9, no: 0.1 }, loose: { yes: 0.1, no: 0.9 } }, minutes: 5, access: 'cover' },
    outside: { p: { worn: { yes: 0.9, no: 0.1 }, loose: { yes: 0.1, no: 0.9 } }, minutes: 30 },
  },
  repairs: {
    renew: { cures: { worn: 1 }, minutes: 100, access: ['cover'] },
    tighten: { cures: { loose: 1 }, minutes: 100 },
  },
  referralFee: 2000,
  needlessOpening: 100,
});
const compiled = compileModel(model);
const belief = beliefOf(compiled, { context: {}, observations: [] });
const at = (needlessOpening: number): Circumstances => ({ prices: { ...defaultPrices(model), needlessOpening } });
const adviceAt = (amount: number) => advise(compiled, belief, at(amount));

describe('a needless opening', () => {
  test('makes the test that opens the engine less worth, and another one best; no price changes', () => {
    const [free, dear] = [adviceAt(0), adviceAt(100)];
    expect(free.best).toMatchObject({ kind: 'test', test: 'inside' });
    expect(dear.best).toMatchObject({ kind: 'test', test: 'outside' });
    const priceOf = ({ tests }: typeof free) => tests.find(({ test: id }) => id === 'inside')!.price.amount;
    expect([priceOf(free), priceOf(dear)]).toEqual([15, 15]);
  });

  test('is named with the step it may come of: half a needless opening, counted at half its amount', () => {
    const [inside, outside] = ['inside', 'outside'].map((id) => adviceAt(100).tests.find(({ test: of }) => of === id)!);
    expect(inside!.needless).toEqual({ expected: 0.5, counted: { amount: 50, currency: 'unit' } });
    expect(outside!.needless).toBeUndefined();
    expect(inside!.netValue.amount).toBeCloseTo(inside!.grossValue.amount - 15 - 50, 9);
    const renew = adviceAt(100).repairNow.steps.find(({ repair }) => repair === 'renew')!;
    // reached only when tightening did not cure: then the cover is needed
    expect(renew.needless).toBeUndefined();
    expect(adviceAt(0).tests.every(({ needless }) => needless === undefined)).toBe(true);
  });

  test('counts as the model says where the prices do not', () => {
    expect(advise(compiled, belief)).toEqual(adviceAt(100));
    const twice = { currency: 'EUR', labourPerHour: 60, partsFactor: 2 };
    const [said, unsaid] = [{ ...twice, needlessOpening: 200 }, twice].map((prices) =>
      advise(compiled, belief, { prices }),
    );
    expect(unsaid).toEqual(said);
  });

  test('costs nothing more where the cover is open', () => {
    const open = advise(compiled, belief, { ...at(100), openAccess: ['cover'] });
    expect(open.tests.every(({ needless }) => needless === undefined)).toBe(true);
    expect(open.best).toMatchObject({ kind: 'test', test: 'inside' });
  });

  test('counts in the problem as in the advice, and never in what was spent', () => {
    const problem = compileCaseProblem(compiled, belief, at(100));
    expect(oneStep.solve(problem).progress.upperBound).toBeCloseTo(adviceAt(100).expectedCost.amount, 9);
    const inside = problem.tests.findIndex(({ id }) => id === 'inside');
    const { cost, needless, branches } = takeAction(problem, problem.start, { kind: 'test', test: inside });
    expect([cost.money, needless]).toEqual([15, 50]);
    for (const { state } of branches) expect(state!.spent.money).toBe(15);
  });

  test('raises the probability from which the test behind it pays', () => {
    const only = compileModel({ ...model, tests: model.tests.filter(({ id }) => id === 'inside') });
    const seen = beliefOf(only, { context: {}, observations: [] });
    const [free, dear] = [0, 20].map((amount) => repairOrTest(only, seen, at(amount)).thresholds!);
    expect(dear!.testingThreshold).toBeGreaterThan(free!.testingThreshold);
  });
});
