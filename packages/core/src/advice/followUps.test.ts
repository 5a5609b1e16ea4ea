import { describe, expect, test } from 'vitest';
import { results } from '../../../../tests/fixtures/results.ts';
import { smallModel } from '../../../../tests/fixtures/smallModel.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { allowedActions } from '../problem/allowedActions.ts';
import type { ModelError } from '../errors/modelError.ts';
import { compileCaseProblem } from '../problem/compileCaseProblem.ts';
import { compileTableProblem } from '../problem/compileTableProblem.ts';
import { takeAction } from '../problem/takeAction.ts';
import { boundedSearch } from '../solvers/boundedSearch.ts';
import { exactDynamicProgramming } from '../solvers/exactDynamicProgramming.ts';
import { oneStep } from '../solvers/oneStep.ts';
import { advise } from './advise.ts';
import { testsWhileOpen } from './testsWhileOpen.ts';

// Even odds of two causes, 100 each to mend: 150 without a test. The look is seen with the first in 0.8, with the second in 0.4; what was
// seen, measured, is confirmed in 0.95 and 0.05.
const model = smallModel({
  causes: { first: 0.5, second: 0.5 },
  tests: {
    look: { p: { first: { seen: 0.8, nothing: 0.2 }, second: { seen: 0.4, nothing: 0.6 } }, price: 2 },
    measure: {
      p: { first: { confirmed: 0.95, sound: 0.05 }, second: { confirmed: 0.05, sound: 0.95 } },
      price: 10,
      follows: [{ test: 'look', outcomes: ['seen'] }],
    },
  },
  repairs: {
    'mend-first': { cures: { first: 1 }, parts: 100 },
    'mend-second': { cures: { second: 1 }, parts: 100 },
  },
  referralFee: 1e4,
});
const compiled = compileModel(model);
const beliefAfter = (...shown: readonly string[]) =>
  beliefOf(compiled, { context: {}, observations: results(...shown.map((one) => one.split(' ') as [string, string])) });

describe('a follow-up', () => {
  test('is not proposed before its look has shown something; why is said', () => {
    for (const belief of [beliefAfter(), beliefAfter('look nothing')]) {
      const { tests, notNow } = advise(compiled, belief);
      expect(tests.map(({ test: id }) => id)).not.toContain('measure');
      expect(notNow.find(({ test: id }) => id === 'measure')).toMatchObject({
        reason: 'nothing-to-follow',
        missing: ['look'],
      });
    }
  });

  test('can be done after it, and is the best step', () => {
    expect(advise(compiled, beliefAfter('look seen')).best).toMatchObject({ kind: 'test', test: 'measure' });
  });

  test('gives its look the worth of both, and the look says what may come on top of its price', () => {
    const [look] = advise(compiled, beliefAfter()).tests;
    // after seen: 10 + 0.65 x 102.564 + 0.35 x 109.524 = 115; after nothing 125; 0.6 x 115 + 0.4 x 125 = 119 instead of 150
    expect(look).toMatchObject({ test: 'look', price: { amount: 2 }, followUps: [{ test: 'measure', minutes: 0 }] });
    expect(look!.grossValue.amount).toBeCloseTo(31, 9);
    expect(look!.netValue.amount).toBeCloseTo(29, 9);
    expect(look!.followUps[0]!.chance).toBeCloseTo(0.6, 12);
    expect(look!.followUps[0]!.price.amount).toBeCloseTo(10, 12);
  });

  test('recorded without its look counts, and is remarked on', () => {
    const alone = beliefAfter('measure confirmed');
    expect(alone.posterior['first']).toBeCloseTo(0.95, 12);
    expect(alone.warnings).toEqual([{ kind: 'look-missing', test: 'measure', items: ['r1'] }]);
    expect(beliefAfter('look seen', 'measure confirmed').warnings).toEqual([]);
  });

  test('of a look whose weights speak for nothing seen is not called for', () => {
    const weighed = (seen: number) =>
      advise(
        compiled,
        beliefOf(compiled, {
          context: {},
          observations: [{ kind: 'result', id: 'w', test: 'look', likelihood: { seen, nothing: 1 } }],
        }),
      ).tests.map(({ test: id }) => id);
    expect(weighed(3)).toEqual(['measure']);
    expect(weighed(0.5)).toEqual([]);
  });

  test('stands below that branch only in a decision problem, and all that look ahead find the cost of both', () => {
    const problem = compileCaseProblem(compiled, beliefAfter());
    const idsIn = (state: typeof problem.start) =>
      allowedActions(problem, state).flatMap((action) =>
        action.kind === 'test' ? [problem.tests[action.test]!.id] : [],
      );
    expect(idsIn(problem.start)).toEqual(['look']);
    const { branches } = takeAction(problem, problem.start, { kind: 'test', test: 0 });
    expect(branches.map(({ outcome, state }) => [outcome, idsIn(state!)])).toEqual([
      ['seen', ['measure']],
      ['nothing', []],
    ]);
    for (const solver of [oneStep, boundedSearch, exactDynamicProgramming])
      expect(solver.solve(problem).progress.upperBound, solver.id).toBeCloseTo(121, 6);
  });

  test('of a look that found nothing is no action of the problem any more', () => {
    expect(compileCaseProblem(compiled, beliefAfter('look nothing')).tests).toEqual([]);
  });
});

test('a follow-up of a follow-up ends with it: it does not become free', () => {
  const p = { first: { yes: 0.8, no: 0.2 }, second: { yes: 0.4, no: 0.6 } };
  const chain = compileModel(
    smallModel({
      causes: { first: 0.5, second: 0.5 },
      tests: {
        look: { p },
        closer: { p, follows: [{ test: 'look', outcomes: ['yes'] }] },
        closest: { p, follows: [{ test: 'closer', outcomes: ['yes'] }] },
      },
    }),
  );
  const testsAfter = (outcome: string) =>
    compileCaseProblem(chain, beliefOf(chain, { context: {}, observations: results(['look', outcome]) })).tests.map(
      ({ id, follows }) => [id, follows.length],
    );
  expect(testsAfter('yes')).toEqual([
    ['closer', 0],
    ['closest', 1],
  ]);
  expect(testsAfter('no')).toEqual([]);
});

test('tables: what a test follows is an outcome there is, of a test that stands before it', () => {
  const rows = [
    [0.8, 0.2],
    [0.4, 0.6],
  ];
  const problemsOf = (look: { test: number; outcome: number }) => {
    try {
      compileTableProblem({
        prior: [0.5, 0.5],
        tests: [
          { id: 'look', cost: 2, outcomeGivenCause: rows },
          { id: 'measure', cost: 10, outcomeGivenCause: rows, follows: [look] },
        ],
        repairs: [],
        referralCost: [100, 100],
      });
      return [];
    } catch (error) {
      return (error as ModelError).problems.map(({ code, path }) => [code, path]);
    }
  };
  expect(problemsOf({ test: 0, outcome: 1 })).toEqual([]);
  expect(problemsOf({ test: 0, outcome: 2 })).toEqual([['too-big', '/tests/1/follows/0/outcome']]);
  expect(problemsOf({ test: 1, outcome: 0 })).toEqual([['too-big', '/tests/1/follows/0/test']]);
});

test('behind an open access too a follow-up waits for its look', () => {
  const opened = smallModel({
    causes: { first: 0.5, second: 0.5 },
    access: { cover: { minutes: 30 } },
    tests: {
      look: { p: { first: { seen: 0.8, nothing: 0.2 }, second: { seen: 0.4, nothing: 0.6 } }, access: 'cover' },
      measure: {
        p: { first: { confirmed: 0.95, sound: 0.05 }, second: { confirmed: 0.05, sound: 0.95 } },
        access: 'cover',
        follows: [{ test: 'look', outcomes: ['seen'] }],
      },
    },
    repairs: { 'mend-first': { cures: { first: 1 }, parts: 100 } },
  });
  const ready = compileModel(opened);
  const belief = beliefOf(ready, { context: {}, observations: [] });
  expect(testsWhileOpen(ready, belief, {}, 'cover').map(({ advice }) => advice.test)).toEqual(['look']);
});
