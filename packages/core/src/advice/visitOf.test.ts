import { describe, expect, test } from 'vitest';
import { advise, beliefOf, compileModel } from '@faultodds/core';
import { smallModel } from '../../../../tests/fixtures/smallModel.ts';

const strong = { a: { yes: 0.95, no: 0.05 }, else: { yes: 0.05, no: 0.95 } };
const fair = { a: { yes: 0.7, no: 0.3 }, else: { yes: 0.3, no: 0.7 } };
const faint = { a: { yes: 0.51, no: 0.49 }, else: { yes: 0.49, no: 0.51 } };

// a minute costs one unit; a look of 6 minutes needs no weighing
const compiled = compileModel(
  smallModel({
    causes: { a: 1, b: 1 },
    labourPerHour: 60,
    access: {
      hood: { minutes: 5 },
      plug: { minutes: 20, requires: ['hood'], engine: 'turned' },
      socket: { minutes: 6 },
    },
    tests: {
      pressure: { p: strong, minutes: 30, access: 'plug', engine: 'turned' },
      face: { p: faint, minutes: 6, access: 'plug' },
      bore: { p: fair, minutes: 24, access: 'plug' },
      'bore-again': { p: faint, minutes: 24, access: 'plug' },
      listen: { p: fair, minutes: 10, access: 'hood', engine: 'running' },
      code: { p: faint, minutes: 3, access: 'socket' },
      drive: { p: strong, minutes: 200, access: 'plug', engine: 'driven' },
    },
    repairs: { 'mend-a': { cures: { a: 0.95 }, minutes: 900 }, 'mend-b': { cures: { b: 0.95 }, minutes: 800 } },
    referralFee: 5000,
  }),
);
const belief = beliefOf(compiled, { context: {}, observations: [] });

describe('a visit', () => {
  const { best, visit } = advise(compiled, belief);
  const ids = visit!.tests.map((one) => one.test);

  test('holds what shares the opening: the look of a few minutes always, the longer one where it pays', () => {
    expect(best).toMatchObject({ kind: 'test', test: 'pressure' });
    expect(ids).toEqual(['face', 'bore', 'pressure']);
  });

  test('not what is set up elsewhere, what needs the plug in, or what tells too little for its time', () => {
    for (const id of ['code', 'listen', 'drive', 'bore-again']) expect(ids).not.toContain(id);
  });

  test('pays the opening once', () => {
    expect(visit!.tests.map(({ price }) => price.amount)).toEqual([6 + 25, 24, 30]);
    expect(visit!.price).toEqual({ amount: 85, currency: 'unit' });
    expect(visit!.minutes).toBe(85);
    expect(visit!.tests.map(({ accessToOpen }) => accessToOpen)).toEqual([['hood', 'plug'], [], []]);
  });
});

test('what is open is looked at before it is closed', () => {
  // pressure and bore are on record and contradict each other; the long drive has been made too
  const seen = ([id, outcome]: readonly [string, string]) => ({ kind: 'result', id, test: id, outcome }) as const;
  const results = [
    ['pressure', 'yes'],
    ['drive', 'no'],
    ['bore', 'yes'],
    ['bore-again', 'no'],
  ] as const;
  const after = beliefOf(compiled, { context: {}, observations: results.map(seen) });
  const { best, visit } = advise(compiled, after, { openAccess: ['plug'] });
  expect(best).toMatchObject({ kind: 'test', test: 'listen' });
  expect(visit!.tests.map((one) => one.test)).toEqual(['face', 'listen']);
  expect(visit!.tests[1]!.accessToClose).toContain('plug');
});

test('there is none where nothing else is behind the opening', () => {
  const alone = compileModel(
    smallModel({
      causes: { a: 1, b: 1 },
      labourPerHour: 60,
      tests: { one: { p: strong, minutes: 5 }, two: { p: fair, minutes: 5 } },
      repairs: { 'mend-a': { cures: { a: 0.95 }, minutes: 900 }, 'mend-b': { cures: { b: 0.95 }, minutes: 800 } },
      referralFee: 5000,
    }),
  );
  expect(advise(alone, beliefOf(alone, { context: {}, observations: [] })).visit).toBeUndefined();
});
