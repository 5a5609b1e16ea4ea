import { expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { results } from '../../../../tests/fixtures/results.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import type { Facts } from '../evidence/facts.ts';
import { findWarnings } from './findWarnings.ts';

const pump = pumpModel();
const compiled = compileModel(
  parseModel({
    ...pump,
    dependentPairs: [
      { a: 'hum', b: 'fuse-look', kind: 'same-fact', shared: 'whether current flows', note: 'warn' },
      { a: 'vacuum', b: 'wheel-look', kind: 'modelled', shared: 'flow', note: 'warn' },
      { a: 'filter:fitted', b: 'filter-look', kind: 'same-fact', shared: 'the filter', note: 'handled' },
      { a: 'vacuum', b: 'fuse-look', kind: 'shared-error', shared: 'the same eyes', note: 'cause-level' },
      { a: 'wheel-look', b: 'filter-look', kind: 'same-question', shared: 'dirt', note: 'handled' },
    ],
    contextOverlaps: [
      { a: 'filter', b: 'suction-hose' },
      { a: 'filter-look', b: 'filter:fitted' },
    ],
    repairs: pump.repairs.map((one) =>
      one.id === 'clear-inlet' ? { ...one, sameAs: { test: 'wheel-look', cured: 'dirty', notCured: 'clean' } } : one,
    ),
  }),
);
const warningsOn = (observations: Facts['observations'], context: Facts['context'] = {}) =>
  findWarnings(compiled, { context, observations });

test('independent results raise no warning', () => {
  expect(warningsOn(results(['hum', 'hums'], ['vacuum', 'weak']))).toEqual([]);
});

test('two results that hang together are named, by how they do', () => {
  expect(warningsOn(results(['hum', 'hums'], ['fuse-look', 'whole']))).toEqual([
    { kind: 'same-fact', a: 'hum', b: 'fuse-look', items: ['r1', 'r2'] },
  ]);
  expect(warningsOn(results(['fuse-look', 'whole'], ['vacuum', 'weak']))).toEqual([
    { kind: 'shared-error', a: 'vacuum', b: 'fuse-look', items: ['r2', 'r1'] },
  ]);
  expect(warningsOn(results(['wheel-look', 'clean'], ['filter-look', 'clean']))).toEqual([
    { kind: 'same-question', a: 'wheel-look', b: 'filter-look', items: ['r1', 'r2'] },
  ]);
});

test('a pair that the model accounts for is no warning, whatever its note says', () => {
  expect(warningsOn(results(['vacuum', 'weak'], ['wheel-look', 'clean']))).toEqual([]);
});

test('an intake answer can tell the fact of a test, and only that answer; a pair that is listed as overlap too is named once', () => {
  const look = results(['filter-look', 'clean']);
  expect(warningsOn(look, { filter: 'fitted' })).toEqual([
    { kind: 'same-fact', a: 'filter:fitted', b: 'filter-look', items: ['context:filter', 'r1'] },
  ]);
  expect(warningsOn(look, { filter: 'none' })).toEqual([]);
});

test('intake answers that overlap are named', () => {
  expect(warningsOn([], { filter: 'none', 'suction-hose': 'none' })).toEqual([
    { kind: 'same-fact', a: 'filter', b: 'suction-hose', items: ['context:filter', 'context:suction-hose'] },
  ]);
});

test('a test repeated, and a repair that asks its question, are repeats', () => {
  const [first, second] = results(['wheel-look', 'clean'], ['wheel-look', 'clean']);
  expect(warningsOn([first!, second!])).toEqual([{ kind: 'repeated', test: 'wheel-look', items: ['r1', 'r2'] }]);
  expect(warningsOn([first!, { kind: 'repair-tried', id: 'x', repair: 'clear-inlet', cured: false }])).toEqual([
    { kind: 'repeated', test: 'wheel-look', items: ['r1', 'x'] },
  ]);
});

test('a test run while the fault slept says nothing, where the fault must run', () => {
  expect(warningsOn(results(['vacuum', 'weak', 'no'], ['wheel-look', 'clean', 'no']))).toEqual([
    { kind: 'asleep', test: 'vacuum', items: ['r1'] },
    { kind: 'asleep', test: 'wheel-look', items: ['r2'] },
  ]);
  expect(warningsOn(results(['fuse-look', 'whole', 'no']))).toEqual([]);
});
