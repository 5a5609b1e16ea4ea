import { describe, expect, test } from 'vitest';
import { misfire } from '@faultodds/misfire';
import { beliefOf } from '../belief/beliefOf.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import type { CodeOptions, CodeObservations } from './codeObservations.ts';
import { isFilledByCodes } from './isFilledByCodes.ts';
import { observationsFromCodes } from './observationsFromCodes.ts';
import { parseTroubleCodes } from './parseTroubleCodes.ts';

const compiled = compileModel(parseModel(misfire));
const read = (list: string, more: Partial<CodeOptions> = {}): CodeObservations =>
  observationsFromCodes(compiled, parseTroubleCodes(list).codes, { suspectCylinder: 1, cylinders: 4, ...more });
const outcomes = (list: string, more: Partial<CodeOptions> = {}): Record<string, unknown> =>
  Object.fromEntries(read(list, more).observations.map((o) => [o.test, o.outcome ?? o.likelihood]));

test('a pasted list becomes observations for the suspect', () => {
  const { observations, kept, remarks } = read('P0301, p0351 pending, P0016');
  expect(observations).toEqual([
    {
      kind: 'result',
      id: 'codes-read-misfire-codes',
      test: 'read-misfire-codes',
      outcome: 'one-cylinder-only',
      note: 'P0301',
    },
    {
      kind: 'result',
      id: 'codes-read-circuit-codes',
      test: 'read-circuit-codes',
      outcome: 'coil-circuit',
      note: 'P0351 pending',
    },
    { kind: 'result', id: 'codes-read-cam-codes', test: 'read-cam-codes', outcome: 'present', note: 'P0016' },
  ]);
  expect(kept).toEqual([]);
  expect(remarks).toEqual([{ kind: 'coil-order-assumed', codes: ['P0351'] }]);
  const belief = beliefOf(compiled, { context: {}, observations });
  expect(belief.posterior['coil-circuit']).toBeGreaterThan(belief.prior['coil-circuit']!);
});

describe('which cylinder', () => {
  test.each([
    ['P0301 P0300', {}, { 'read-misfire-codes': 'one-cylinder-and-random' }],
    ['P0300', {}, { 'read-misfire-codes': 'random-only' }],
    ['P0301 P0303', {}, { 'read-misfire-codes': 'one-cylinder-and-random' }],
    ['P0303', {}, {}],
    ['P0203 P0204', { suspectCylinder: 3 }, { 'read-circuit-codes': 'injector-circuit' }],
    ['P0352', {}, {}],
    ['P0352', { cylinderOfCoil: { B: 1 } }, { 'read-circuit-codes': 'coil-circuit' }],
    ['P0201 P0351', {}, { 'read-circuit-codes': { 'coil-circuit': 1, 'injector-circuit': 1 } }],
    ['P0171', {}, { 'read-mixture-codes': 'lean' }],
    ['P0171 P0172', {}, {}],
    ['P0171 P0175', { bank: 2 }, { 'read-mixture-codes': 'rich' }],
    ['P0018', { bank: 1 }, {}],
  ] as const)('%s with %j', (list, more, expected) => {
    expect(outcomes(list, more)).toEqual(expected);
  });
});

test('codes that say nothing here are kept with their class and the reason', () => {
  const { observations, kept, remarks } = read('P0420, P0315, P0303, P0308, P0350, P1399, C0035');
  expect(observations).toEqual([]);
  expect(kept.map(({ code, reason }) => [code.code, reason])).toEqual([
    ['P0420', 'says-nothing-here'],
    ['P0315', 'circumstance'],
    ['P0303', 'other-cylinder'],
    ['P0308', 'beyond-the-engine'],
    ['P0350', 'cylinder-not-told'],
    ['P1399', 'says-nothing-here'],
    ['C0035', 'says-nothing-here'],
  ]);
  expect(remarks).toEqual([
    { kind: 'suspect-not-named', codes: ['P0303', 'P0308'] },
    { kind: 'counts-doubtful', codes: ['P0315'] },
  ]);
});

test('a missing code is a finding only when the list is complete', () => {
  expect(outcomes('P0301')).toEqual({ 'read-misfire-codes': 'one-cylinder-only' });
  expect(outcomes('P0301', { listIsComplete: true })).toEqual({
    'read-misfire-codes': 'one-cylinder-only',
    'read-circuit-codes': 'none',
    'read-mixture-codes': 'none',
    'read-cam-codes': 'none',
  });
  expect(outcomes('', { listIsComplete: true })['read-misfire-codes']).toBe('none-stored');
});

test('every test that the codes give a result of is known as one, and no other test of the model', () => {
  const { tests } = compiled.model;
  const filled = tests.filter(({ id }) => isFilledByCodes(id)).map(({ id }) => id);
  const given = ['P0301, P0351, P0171, P0011', ''].flatMap((list) =>
    Object.keys(outcomes(list, { listIsComplete: true })),
  );
  expect(filled).toHaveLength(4);
  expect([...new Set(given)].sort()).toEqual([...filled].sort());
});
