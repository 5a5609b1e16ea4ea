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
      { a: 'hum', b: 'fuse-look', shared: 'whether current flows', treatment: 'warn' },
      { a: 'vacuum', b: 'wheel-look', shared: 'flow', treatment: 'handled by a mechanism' },
      { a: 'filter:fitted', b: 'filter-look', shared: 'the filter', treatment: 'warn' },
    ],
    contextOverlaps: [{ a: 'filter', b: 'suction-hose' }],
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

test('one fact told twice is named with both results', () => {
  expect(warningsOn(results(['hum', 'hums'], ['fuse-look', 'whole']))).toEqual([
    { kind: 'same-fact', items: ['r1', 'r2'], shared: 'whether current flows', treatment: 'warn' },
  ]);
});

test('a pair that a mechanism handles is no warning', () => {
  expect(warningsOn(results(['vacuum', 'weak'], ['wheel-look', 'clean']))).toEqual([]);
});

test('an intake answer can tell the fact of a test, and only that answer', () => {
  const look = results(['filter-look', 'clean']);
  expect(warningsOn(look, { filter: 'fitted' })).toEqual([
    { kind: 'same-fact', items: ['context:filter', 'r1'], shared: 'the filter', treatment: 'warn' },
  ]);
  expect(warningsOn(look, { filter: 'none' })).toEqual([]);
});

test('intake answers that overlap are named', () => {
  expect(warningsOn([], { filter: 'none', 'suction-hose': 'none' })).toEqual([
    expect.objectContaining({ kind: 'same-fact', items: ['context:filter', 'context:suction-hose'] }),
  ]);
});

test('a test repeated, and a repair that asks its question, are repeats', () => {
  const [first, second] = results(['wheel-look', 'clean'], ['wheel-look', 'clean']);
  expect(warningsOn([first!, second!])).toEqual([
    expect.objectContaining({ kind: 'repeated', items: ['r1', 'r2'], shared: 'wheel-look' }),
  ]);
  expect(warningsOn([first!, { kind: 'repair-tried', id: 'x', repair: 'clear-inlet', cured: false }])).toEqual([
    expect.objectContaining({ kind: 'repeated', items: ['r1', 'x'] }),
  ]);
});

test('a test run while the fault slept says nothing, where the fault must run', () => {
  expect(warningsOn(results(['vacuum', 'weak', 'no'], ['fuse-look', 'whole', 'no']))).toEqual([
    expect.objectContaining({ kind: 'asleep', items: ['r1'], shared: 'vacuum' }),
  ]);
});
