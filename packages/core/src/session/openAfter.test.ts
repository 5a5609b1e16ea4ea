import { describe, expect, test } from 'vitest';
import { advise, beliefOf, caseState, compileModel, recordEvent, startCase, stepFactsOf } from '@faultodds/core';
import { allowedActions, compileCaseProblem, takeAction } from '@faultodds/core/planning';
import { smallModel } from '../../../../tests/fixtures/smallModel.ts';
import { accessIds } from '../cost/accessBits.ts';

const p = { a: { yes: 0.9, no: 0.1 }, else: { yes: 0.1, no: 0.9 } };
// a minute costs one unit
const compiled = compileModel(
  smallModel({
    causes: { a: 1, b: 1 },
    labourPerHour: 60,
    access: {
      hood: { minutes: 4 },
      plug: { minutes: 10, requires: ['hood'], engine: 'turned' },
      plugs: { minutes: 30, requires: ['plug'], engine: 'turned' },
      cover: { minutes: 50, requires: ['hood'], engine: 'complete' },
      head: { minutes: 400, requires: ['cover'], engine: 'apart' },
    },
    tests: {
      look: { p, minutes: 3, access: 'plug' },
      gauge: { p, minutes: 20, access: 'plugs', engine: 'complete' },
      humps: { p, minutes: 9, engine: 'complete' },
      snap: { p, minutes: 15, access: 'plug', engine: 'running' },
      swap: { p, minutes: 12, access: 'plug', engine: 'driven' },
    },
    repairs: {
      'mend-a': { cures: { a: 0.9 }, minutes: 60, access: ['plug'] },
      'mend-b': { cures: { b: 0.9 }, minutes: 500 },
    },
    referralFee: 900,
  }),
);
const closed = (id: string): readonly string[] =>
  accessIds(compiled, compiled.structure.closedForTest[compiled.tests.get(id)!.index]!.closes);

describe('what has to be closed for a test', () => {
  test('is all that leaves less of the engine than it needs, with what stands on it', () => {
    expect(closed('look')).toEqual([]);
    expect(closed('humps')).toEqual(['plug', 'plugs', 'head']);
  });

  test('is not its own access, unless it is driven', () => {
    expect(closed('gauge')).toEqual(['head']);
    expect(closed('snap')).toEqual(['cover', 'plugs', 'head']);
    expect(closed('swap')).toEqual(['plug', 'cover', 'plugs', 'head']);
  });

  test('is said with the step, and is not paid twice', () => {
    const step = { kind: 'test', test: 'snap' } as const;
    const facts = stepFactsOf(compiled, {}, { openAccess: ['plugs', 'cover'] }, step);
    expect(facts).toMatchObject({ accessToOpen: [], accessToClose: ['plugs', 'cover'], minutes: 15 });
    const swap = stepFactsOf(compiled, {}, { openAccess: ['plug'] }, { kind: 'test', test: 'swap' });
    expect(swap).toMatchObject({ accessToOpen: [], accessToClose: ['plug'], minutes: 12 });
  });
});

const facts = { context: {}, observations: [] };
const belief = beliefOf(compiled, facts);

test('a case closes with a result what the test cannot be done with', () => {
  const after = (...tests: readonly string[]) =>
    caseState(
      tests.reduce(
        (session, id) => recordEvent(compiled, session, { kind: 'result-recorded', id, test: id, outcome: 'no' }),
        startCase({ id: 'one', title: 'one' }),
      ),
    ).openAccess;
  expect(after('gauge')).toEqual(['hood', 'plug', 'plugs']);
  expect(after('gauge', 'snap')).toEqual(['hood', 'plug']);
  expect(after('gauge', 'snap', 'humps')).toEqual(['hood']);
  expect(after('swap')).toEqual(['hood']);
});

test('after a repair and its drive nothing is open that cannot be driven with', () => {
  const session = startCase({ id: 'one', title: 'one' });
  const open = recordEvent(compiled, session, { kind: 'access-opened', access: 'cover' });
  const tried = recordEvent(compiled, open, { kind: 'repair-tried', id: 'r', repair: 'mend-a', cured: false });
  expect(caseState(tried).openAccess).toEqual(['hood']);
});

test('with the engine apart no test is proposed that has to turn it', () => {
  const { tests, notNow } = advise(compiled, belief, { openAccess: ['head'] });
  expect(tests.map((one) => one.test)).toEqual(['look']);
  expect(notNow.map(({ test: id, reason, missing }) => [id, reason, missing])).toEqual(
    ['gauge', 'humps', 'snap', 'swap'].map((id) => [id, 'engine-apart', ['head']]),
  );
  const problem = compileCaseProblem(compiled, belief, { openAccess: ['head'] });
  const allowed = allowedActions(problem, problem.start).flatMap((action) =>
    action.kind === 'test' ? [problem.tests[action.test]!.id] : [],
  );
  expect(allowed).toEqual(['look']);
  // once a repair has closed it, the others can be done
  const { branches } = takeAction(problem, problem.start, { kind: 'repair', repair: 0 });
  const later = allowedActions(problem, branches.find(({ state }) => state !== undefined)!.state!);
  expect(later.filter(({ kind }) => kind === 'test')).toHaveLength(5);
});

test('what is closed for a test and wanted again is paid again', () => {
  const problem = compileCaseProblem(compiled, belief, { openAccess: ['plug'] });
  const at = (id: string): number => problem.tests.findIndex((one) => one.id === id);
  const { branches } = takeAction(problem, problem.start, { kind: 'test', test: at('humps') });
  const { open } = branches[0]!.state!;
  expect(accessIds(compiled, open)).toEqual(['none', 'hood']);
  expect(problem.testCost(at('look'), problem.start.open).money).toBe(3);
  expect(problem.testCost(at('look'), open).money).toBe(13);
  // and it is worth less for that: the repair behind the plug has lost its opening too
  const [open10, closed10] = [['plug'], ['hood']].map((openAccess) => advise(compiled, belief, { openAccess }));
  const net = (advice: typeof open10): number => advice!.tests.find((one) => one.test === 'humps')!.netValue.amount;
  expect(net(open10)).toBeLessThan(net(closed10));
});
