import { describe, expect, test } from 'vitest';
import { countTurns } from '../../../../tests/fixtures/countTurns.ts';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { smallModel } from '../../../../tests/fixtures/smallModel.ts';
import { randomModel } from '../../../../tests/oracle/core/randomModel.ts';
import { advise } from '../advice/advise.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import { compileCaseProblem } from '../problem/compileCaseProblem.ts';
import { takeAction } from '../problem/takeAction.ts';
import { costOfPolicy } from '../solvers/costOfPolicy.ts';
import { exactDynamicProgramming } from '../solvers/exactDynamicProgramming.ts';
import { runToEnd } from '../turns/runToEnd.ts';
import { beginSettling, settleAdvice, settleAdviceInTurns } from './settleAdvice.ts';

// Four causes alike; two tests that each halve them. With two causes left handing on is as good as with four, so that one test alone is
// worth nothing, and both together are worth what handing on costs.
const halves = (high: readonly string[]) => ({
  ...Object.fromEntries(high.map((cause) => [cause, { yes: 0.99, no: 0.01 }])),
  else: { yes: 0.01, no: 0.99 },
});
const four = compileModel(
  smallModel({
    causes: { a: 1, b: 1, c: 1, d: 1 },
    tests: { one: { p: halves(['a', 'b']), price: 30 }, two: { p: halves(['a', 'c']), price: 30 } },
    repairs: Object.fromEntries(
      ['a', 'b', 'c', 'd'].map((cause) => [`fit-${cause}`, { cures: { [cause]: 1 }, parts: 400 }]),
    ),
    referralFee: 150,
  }),
);
const nothing = { context: {}, observations: [] } as const;
const belief = beliefOf(four, nothing);
const [price, fee] = [30, 150];

describe('where one step hands the case on', () => {
  test('two tests that pay only together are found, with what they save', () => {
    expect(advise(four, belief).best.kind).toBe('refer');
    const settled = settleAdvice(four, belief);
    expect(settled.best).toMatchObject({ kind: 'test', price: { amount: price }, cautions: [] });
    expect(settled.oneStep.kind).toBe('refer');
    expect(settled.differs).toBe(true);
    const optimum = exactDynamicProgramming.solve(compileCaseProblem(four, belief)).progress.upperBound;
    expect(settled.expectedCost.amount).toBeCloseTo(optimum, 9);
    expect(settled.saving.amount).toBeCloseTo(fee + 400 - optimum, 9);
    expect(settled.lowerBound.amount).toBeLessThan(optimum + 1e-9);
  });

  test('handing on costs what it costs more, the other test about the same, a repair more', () => {
    const { others, expectedCost } = settleAdvice(four, belief);
    expect(others).toHaveLength(6);
    expect(others.find(({ step }) => step.kind === 'test')).toMatchObject({ isAboutTheSame: true });
    const refer = others.find(({ step }) => step.kind === 'refer')!;
    expect(refer.more.amount).toBeCloseTo(550 - expectedCost.amount, 9);
    expect(refer.isAboutTheSame).toBe(false);
    const amounts = others.map(({ more }) => more.amount);
    expect(amounts).toEqual([...amounts].sort((a, b) => a - b));
  });

  test('one step alone is what is left where nothing may be examined', () => {
    const { best, differs, others, steps, isSettled } = settleAdvice(four, belief, {}, { steps: 0 });
    expect(best).toEqual(advise(four, belief).best);
    expect({ differs, others, steps, isSettled }).toEqual({ differs: false, others: [], steps: 0, isSettled: false });
  });
});

test('a repair that seems to have cured is proved: there is nothing to look for', () => {
  const pump = compileModel(parseModel(pumpModel()));
  const cured = { kind: 'repair-tried', id: 'r1', repair: 'fit-fuse', cured: true } as const;
  const seen = beliefOf(pump, { context: {}, observations: [cured] });
  expect(settleAdvice(pump, seen)).toMatchObject({
    best: advise(pump, seen).best,
    expectedCost: advise(pump, seen).expectedCost,
    steps: 0,
    isSettled: true,
  });
});

describe('a search that is asked again', () => {
  const pump = compileModel(parseModel(pumpModel()));
  const seen = beliefOf(pump, nothing);
  const whole = settleAdvice(pump, seen, {}, { steps: 20 });

  test('goes on from what it has, and with as many steps has its answer at once', () => {
    const search = beginSettling(pump, seen);
    expect(search.advice).toEqual(advise(pump, seen));
    const few = runToEnd(search.inTurns({ steps: 5 }));
    expect(few).toEqual(settleAdvice(pump, seen, {}, { steps: 5 }));
    expect(countTurns(search.inTurns({ steps: 5 }))).toEqual({ answer: few, turns: 0 });
    expect(runToEnd(search.inTurns({ steps: 20 }))).toEqual(whole);
  });

  test('stops with the turn in which it is told to, answers from what it has, and comes to the same answer afterwards', () => {
    const { turns } = countTurns(settleAdviceInTurns(pump, seen, {}, { steps: 20 }));
    expect(turns).toBeGreaterThan(20);
    for (const at of [0, 1, 3, 9, 15]) {
      const search = beginSettling(pump, seen);
      const signal = { aborted: at === 0 };
      const stopped = countTurns(search.inTurns({ steps: 20, signal }), (turn) => {
        if (turn === at) signal.aborted = true;
      });
      expect(stopped.turns - at, `stopped after ${at}`).toBeLessThanOrEqual(1);
      expect(stopped.answer.isSettled).toBe(false);
      expect(stopped.answer.steps).toBeLessThan(20);
      expect(runToEnd(search.inTurns({ steps: 20 }))).toEqual(whole);
    }
  });

  test('tells better answers meanwhile, none dearer than the one before', () => {
    const told = [...settleAdviceInTurns(pump, seen, {}, { steps: 40 })].flatMap((one) => one ?? []);
    expect(told.length).toBeGreaterThan(2);
    told.forEach(({ expectedCost }, at) => {
      if (at > 0) expect(expectedCost.amount).toBeLessThanOrEqual(told[at - 1]!.expectedCost.amount + 1e-12);
    });
  });
});

test('on random models it is between the optimum and one step, and no other step costs more than it says', () => {
  for (let seed = 1; seed <= 25; seed += 1) {
    const model = randomModel(seed);
    const compiled = compileModel({
      ...model,
      tests: model.tests.slice(0, 3),
      repairs: model.repairs.filter(({ referral }, at) => referral === true || at < 3),
    });
    const seen = beliefOf(compiled, nothing);
    const one = advise(compiled, seen);
    const settled = settleAdvice(compiled, seen, {}, { steps: 30 });
    const problem = compileCaseProblem(compiled, seen);
    const exact = exactDynamicProgramming.solve(problem);
    const optimum = exact.progress.upperBound;
    const slack = 1e-9 * optimum;
    expect(settled.expectedCost.amount).toBeGreaterThan(optimum - slack);
    expect(settled.expectedCost.amount).toBeLessThan(one.expectedCost.amount + slack);
    expect(settled.lowerBound.amount).toBeLessThan(optimum + slack);
    for (const { step, more } of settled.others) {
      const action =
        step.kind === 'test'
          ? { kind: 'test' as const, test: problem.tests.findIndex(({ id }) => id === step.test) }
          : step.kind === 'repair'
            ? { kind: 'repair' as const, repair: problem.repairs.findIndex(({ id }) => id === step.repair) }
            : { kind: 'refer' as const };
      const { cost, needless, branches } = takeAction(problem, problem.start, action);
      const least = branches.reduce(
        (sum, { probability, state }) =>
          state === undefined ? sum : sum + probability * costOfPolicy(problem, exact.policy, { from: state }),
        cost.money + needless,
      );
      expect(least, `model ${seed}`).toBeLessThan(settled.expectedCost.amount + more.amount + slack);
    }
  }
});

test('options that are none are refused at once', () => {
  for (const options of [{ steps: -1 }, { signal: 3 }, { stpes: 3 }])
    expect(() => settleAdviceInTurns(four, belief, {}, options as never)).toThrow(
      expect.objectContaining({ name: 'OptionError' }),
    );
});
