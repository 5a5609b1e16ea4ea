import { describe, expect, test } from 'vitest';
import { deepFreeze } from '../../../../tests/fixtures/deepFreeze.ts';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { ModelError } from '../errors/modelError.ts';
import type { Model } from './model.ts';
import { parseModel } from './parseModel.ts';

type Draft<T> = { -readonly [K in keyof T]: Draft<T[K]> };

/** The pump, spoilt. */
function spoilt(spoil: (model: Draft<Model>) => void): unknown {
  const model = structuredClone(pumpModel()) as Draft<Model>;
  spoil(model);
  return model;
}

function problemsOf(input: unknown): readonly { code: string; path: string }[] {
  try {
    parseModel(input);
    return [];
  } catch (error) {
    expect(error).toBeInstanceOf(ModelError);
    return (error as ModelError).problems;
  }
}

test('a model is returned as it came, and not touched', () => {
  const frozen = deepFreeze(pumpModel());
  expect(parseModel(frozen)).toEqual(pumpModel());
});

const pair = { a: 'hum', b: 'wheel-look', kind: 'same-fact', shared: 'water', note: 'for tests' } as const;

describe('one mistake, one problem, in its place', () => {
  const cases: readonly (readonly [string, (model: Draft<Model>) => void, string, string])[] = [
    ['a row that sums to 1.02', (m) => (m.tests[0]!.rows[0]!.p['hums'] = 0.92), 'row-not-one', '/tests/0/rows/0/p'],
    [
      'a likelihood of zero',
      (m) => (m.tests[0]!.rows[0]!.p = { hums: 1, silent: 0 }),
      'likelihood-certain',
      '/tests/0/rows/0/p/silent',
    ],
    ['a state left out', (m) => (m.tests[0]!.rows[0]!.p = { hums: 1 }), 'row-key-missing', '/tests/0/rows/0/p'],
    [
      'a state nobody knows',
      (m) => (m.causes[0]!.states['drive']!.p['spinning'] = 0.1),
      'row-key-unknown',
      '/causes/0/states/drive/p/spinning',
    ],
    ['no default row', (m) => m.tests[1]!.rows.pop(), 'default-row-missing', '/tests/1/rows'],
    ['a default row before others', (m) => m.tests[0]!.rows.reverse(), 'default-row-not-last', '/tests/0/rows/0'],
    [
      'a mechanism with background and rows',
      (m) => (m.mechanisms[0]!.rows = m.tests[0]!.rows),
      'mechanism-rows',
      '/mechanisms/0',
    ],
    [
      'a pair with a part nobody knows',
      (m) => m.dependentPairs.push({ ...pair, b: 'wheel-lok' }),
      'pair-part-unknown',
      '/dependentPairs/0/b',
    ],
    [
      'a pair with an answer nobody gives',
      (m) => m.dependentPairs.push({ ...pair, b: 'filter:paper' }),
      'value-unknown',
      '/dependentPairs/0/b',
    ],
    [
      'a test paired with itself',
      (m) => m.dependentPairs.push({ ...pair, b: 'hum' }),
      'pair-with-itself',
      '/dependentPairs/0',
    ],
    [
      'a pair given twice',
      (m) => m.dependentPairs.push(pair, { ...pair, a: pair.b, b: pair.a }),
      'pair-twice',
      '/dependentPairs/1',
    ],
    [
      'an intake answer that asks the question of a test',
      (m) => m.dependentPairs.push({ ...pair, b: 'filter:fitted', kind: 'same-question' }),
      'pair-no-test',
      '/dependentPairs/0/kind',
    ],
    [
      'intake facts that overlap, one of them unknown',
      (m) => m.contextOverlaps.push({ a: 'filter', b: 'hose' }),
      'pair-part-unknown',
      '/contextOverlaps/0/b',
    ],
    [
      'a fault that never goes without a cure',
      (m) => (m.goneWithoutCure = { best: 0, low: 0, high: 0.1, ess: 5, source: 'judgement' }),
      'likelihood-certain',
      '/goneWithoutCure/best',
    ],
    [
      'a fault that always does',
      (m) => (m.goneWithoutCure = { best: 1, low: 0.5, high: 1, ess: 5, source: 'judgement' }),
      'likelihood-certain',
      '/goneWithoutCure/best',
    ],
    ['a cause of no group', (m) => (m.causes[1]!.group = 'wind'), 'group-unknown', '/causes/1/group'],
    [
      'a condition on a mechanism nobody knows',
      (m) => (m.tests[0]!.rows[0]!.when = { drove: ['turning'] }),
      'mechanism-unknown',
      '/tests/0/rows/0/when/drove',
    ],
    [
      'a condition on a state nobody knows',
      (m) => (m.tests[0]!.rows[0]!.when = { drive: ['turned'] }),
      'state-unknown',
      '/tests/0/rows/0/when/drive/0',
    ],
    [
      'a repair for nothing known',
      (m) => (m.repairs[0]!.cures['rust'] = m.repairs[0]!.cures['fuse-blown']!),
      'cause-unknown',
      '/repairs/0/cures/rust',
    ],
    ['an access nobody knows', (m) => (m.tests[1]!.access = 'lid-of'), 'access-unknown', '/tests/1/access'],
    ['a tool nobody knows', (m) => m.tests[0]!.equipment.push('hammer'), 'equipment-unknown', '/tests/0/equipment/1'],
    ['a caution nobody knows', (m) => m.repairs[0]!.cautions.push('fire'), 'caution-unknown', '/repairs/0/cautions/1'],
    [
      'a number without its source',
      (m) => (m.causes[0]!.weight.source = 'hearsay'),
      'source-unknown',
      '/causes/0/weight/source',
    ],
    [
      'a best estimate outside its range',
      (m) => (m.causes[0]!.weight.low = 401),
      'range-disordered',
      '/causes/0/weight/best',
    ],
    ['two tests of one name', (m) => (m.tests[3]!.id = 'vacuum'), 'id-duplicate', '/tests/3/id'],
    [
      'a multiplier of zero that is not by definition',
      (m) => (m.context[0]!.values[1]!.multipliers['hose-leak']!.definitional = false),
      'multiplier-zero',
      '/context/0/values/1/multipliers/hose-leak/best',
    ],
    [
      'a follow-up of a test nobody knows',
      (m) => (m.tests[0]!.follows = [{ test: 'wheel-lok', outcomes: ['turns'] }]),
      'test-unknown',
      '/tests/0/follows/0/test',
    ],
    [
      'a follow-up of an outcome nobody knows',
      (m) => (m.tests[0]!.follows = [{ test: m.tests[1]!.id, outcomes: ['turnz'] }]),
      'outcome-unknown',
      '/tests/0/follows/0/outcomes/0',
    ],
    [
      'follow-ups that wait for each other',
      (m) => {
        m.tests[0]!.follows = [{ test: m.tests[1]!.id, outcomes: [m.tests[1]!.outcomes[0]!.id] }];
        m.tests[1]!.follows = [{ test: m.tests[0]!.id, outcomes: [m.tests[0]!.outcomes[0]!.id] }];
      },
      'follows-cycle',
      '/tests/0/follows',
    ],
    ['access in a circle', (m) => (m.access[1]!.requires = ['wheel-out']), 'access-cycle', '/access/1/requires'],
    ['two referrals', (m) => (m.repairs[0]!.referral = true), 'referral-missing', '/repairs'],
    ['a cause no repair cures', (m) => m.repairs.splice(2, 1), 'cause-not-cured', '/causes/2'],
  ];
  test.each(cases)('%s', (_, spoil, code, path) => {
    expect(problemsOf(spoilt(spoil))).toContainEqual(expect.objectContaining({ code, path }));
  });

  test('a cause no test can speak about', () => {
    const model = spoilt((m) => {
      m.causes[4]!.states = {};
    });
    expect(problemsOf(model)).toEqual([expect.objectContaining({ code: 'cause-unreachable', path: '/causes/4' })]);
  });

  test('no cause for what the model does not know', () => {
    const model = spoilt((m) => {
      m.causes.pop();
      m.repairs.at(-1)!.cures = {};
    });
    expect(problemsOf(model)).toEqual([expect.objectContaining({ code: 'not-listed-missing', path: '/causes' })]);
  });

  test('mechanisms in a circle', () => {
    const model = spoilt((m) => {
      const rows = [{ when: {}, p: { full: 0.5, poor: 0.5 }, ess: 1, source: 'judgement' }];
      for (const [id, parent] of [
        ['a', 'b'],
        ['b', 'a'],
      ] as const) {
        m.mechanisms.push({ id, label: id, states: m.mechanisms[1]!.states, parents: [parent], rows });
      }
    });
    expect(problemsOf(model)).toContainEqual(
      expect.objectContaining({ code: 'mechanism-cycle', path: '/mechanisms/2/parents' }),
    );
  });
});

test('a hint is something to do', () => {
  expect(() => parseModel(spoilt((m) => (m.tests[1]!.access = 'lid-of')))).toThrow(`hint: did you mean 'lid-off'?`);
  expect(() => parseModel(spoilt((m) => (m.tests[0]!.rows[0]!.p['silent'] = 0.2)))).toThrow(/sums to 1\.1, expected 1/);
});

test('unrelated mistakes are all reported', () => {
  const model = spoilt((m) => {
    m.tests[0]!.access = 'roof-off';
    m.causes[0]!.group = 'wind';
    m.repairs[1]!.minutes.source = 'hearsay';
  });
  expect(
    problemsOf(model)
      .map(({ code }) => code)
      .sort(),
  ).toEqual(['access-unknown', 'group-unknown', 'source-unknown']);
});

test.each(['goneWithoutCure', 'leastRepairMinutes', 'needlessOpening'])(
  'a model without %s is refused: no number is made up',
  (name) => {
    const { [name as 'goneWithoutCure']: _, ...rest } = pumpModel();
    expect(problemsOf(rest)).toEqual([expect.objectContaining({ code: 'value-missing', path: `/${name}` })]);
  },
);
