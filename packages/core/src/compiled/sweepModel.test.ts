import { expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import { advise } from '../advice/advise.ts';
import { compileModel } from './compileModel.ts';
import type { Model } from '../model/model.ts';
import { parseModel } from '../model/parseModel.ts';

const { tests, mechanisms, ...rest } = pumpModel();
const [hum] = tests;
const [drive] = mechanisms;

// Four mechanisms of 700 states, six tests of which each reads two: no table of the model is too large, but seen together all four hang together.
const states = Array.from({ length: 700 }, (_, at) => `s${at}`);
const even = Object.fromEntries(states.map((state) => [state, 1 / 700]));
const wide = ['a', 'b', 'c', 'd'];
const pairs = wide.flatMap((first, at) => wide.slice(at + 1).map((second) => [first, second] as const));
const knot: Model = {
  ...rest,
  mechanisms: [
    ...mechanisms,
    ...wide.map((id) => ({
      ...drive!,
      id,
      states: states.map((state) => ({ id: state, label: state })),
      background: { ...drive!.background!, p: even },
    })),
  ],
  tests: [
    ...tests,
    ...pairs.map(([first, second]) => ({
      ...hum!,
      id: `${first}-${second}`,
      rows: hum!.rows.map((row) => ({
        ...row,
        when: Object.keys(row.when).length === 0 ? {} : { [first]: ['s0'], [second]: ['s0'] },
      })),
    })),
  ],
};

const seen = (test: string) => ({ kind: 'result', id: test, test, outcome: 'hums' }) as const;

test('results that tie more together than can be computed with are an EvidenceError', () => {
  const compiled = compileModel(parseModel(knot));
  const observations = pairs.map(([a, b]) => seen(`${a}-${b}`));
  expect(() => beliefOf(compiled, { context: {}, observations })).toThrow(
    expect.objectContaining({ name: 'EvidenceError', code: 'tree-too-wide', path: '/observations' }),
  );
});

const spoilt = (change: (model: Model) => Model) => () => {
  const compiled = compileModel(change(parseModel(pumpModel())));
  return advise(compiled, beliefOf(compiled, { context: {}, observations: [seen('hum')] }));
};
const noNumber = (row: Model['tests'][number]['rows'][number]) => ({ ...row, p: { hums: NaN, silent: NaN } });

test.each([
  [
    'of a test on record',
    (model: Model) => ({
      ...model,
      tests: model.tests.map((one, at) => (at === 0 ? { ...one, rows: one.rows.map(noNumber) } : one)),
    }),
    { name: 'EvidenceError', code: 'not-computable', path: '/observations' },
  ],
  [
    'of a test to come',
    (model: Model) => ({
      ...model,
      tests: model.tests.map((one, at) =>
        at === 1 ? { ...one, rows: one.rows.map((row) => ({ ...row, p: { strong: 2, weak: 2 } })) } : one,
      ),
    }),
    { name: 'ModelError', code: 'not-computable', path: '/tests/1' },
  ],
  [
    'of a mechanism',
    (model: Model) => ({
      ...model,
      mechanisms: model.mechanisms.map((one) => ({
        ...one,
        background: { ...one.background!, p: { turning: 2, standing: 2, full: 2, poor: 2 } },
      })),
    }),
    { name: 'ModelError', code: 'not-computable', path: '/mechanisms' },
  ],
])('numbers %s that were spoilt after the check are an error of this package', (_, change, error) => {
  expect(spoilt(change)).toThrow(expect.objectContaining(error));
});
