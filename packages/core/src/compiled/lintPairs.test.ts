import { expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import type { DependentPair, Model } from '../model/model.ts';
import { lintPairs } from './lintPairs.ts';

const pump = pumpModel();
const codesOf = (pair: Partial<DependentPair>, model: Model = pump): readonly string[] =>
  lintPairs({
    ...model,
    dependentPairs: [{ a: 'hum', b: 'vacuum', kind: 'modelled', shared: 'water', note: 'for tests', ...pair }],
  }).map(({ code, path }) => `${code} ${path}`);
const suspicious = ['pair-not-modelled /dependentPairs/0/kind'];

test('tests that read nothing in common are not modelled together', () => {
  expect(codesOf({})).toEqual(suspicious);
  expect(codesOf({ kind: 'shared-error' })).toEqual([]);
});

test('tests that name one cause are; tests that name two are not', () => {
  expect(codesOf({ a: 'wheel-look', b: 'filter-look' })).toEqual([]);
  expect(codesOf({ a: 'fuse-look', b: 'filter-look' })).toEqual(suspicious);
});

test('so are tests whose mechanisms hang together', () => {
  const { background: _, ...flow } = pump.mechanisms[1]!;
  const row = { when: {}, p: { full: 0.9, poor: 0.1 }, ess: 5, source: 'judgement' };
  const mechanisms = [pump.mechanisms[0]!, { ...flow, parents: ['drive'], rows: [row] }];
  expect(codesOf({}, { ...pump, mechanisms })).toEqual([]);
});

test('an intake answer is no test: the model says what it does to causes', () => {
  expect(codesOf({ b: 'filter:fitted' })).toEqual([]);
});
