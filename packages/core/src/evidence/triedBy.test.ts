import { describe, expect, test } from 'vitest';
import {
  advise,
  beliefOf,
  compileModel,
  parseModel,
  proofOfRepair,
  type Facts,
  type TestResult,
} from '@faultodds/core';
import { misfire } from '@faultodds/misfire';
import { triedBy } from './triedBy.ts';

const compiled = compileModel(parseModel(misfire));
const { model } = compiled;
const renewed = (outcome: string, changes: Partial<TestResult> = {}): TestResult => ({
  kind: 'result',
  id: 'r',
  test: 'coil-replaced',
  outcome,
  faultActive: 'yes',
  ...changes,
});
const facts = (...observations: Facts['observations']): Facts => ({ context: {}, observations });

describe('a part renewed as a test is a repair tried', () => {
  test('that did not cure where the misfire stays, and cured where it is gone', () => {
    expect(triedBy(model, renewed('misfire-stays'), false)).toEqual(['replace-coil']);
    expect(triedBy(model, renewed('misfire-gone'), true)).toEqual(['replace-coil']);
    expect(triedBy(model, renewed('misfire-gone'), false)).toEqual([]);
    expect(triedBy(model, { kind: 'repair-tried', id: 'r', repair: 'replace-coil', cured: true }, true)).toEqual([
      'replace-coil',
    ]);
  });

  test('but not while the fault slept, nor by another test', () => {
    expect(triedBy(model, renewed('misfire-gone', { faultActive: 'no' }), true)).toEqual([]);
    expect(triedBy(model, renewed('stays', { test: 'coil-swap' }), false)).toEqual([]);
  });

  test('so the same repair is not proposed after it', () => {
    const { repairNow } = advise(compiled, beliefOf(compiled, facts(renewed('misfire-stays'))));
    expect(repairNow.steps.map(({ repair }) => repair)).not.toContain('replace-coil');
  });

  test('and when the misfire is gone with it, it is proved', () => {
    const seen = facts(renewed('misfire-gone'));
    expect(proofOfRepair(compiled, seen)).toMatchObject({ repair: 'replace-coil' });
    const { best, visit } = advise(compiled, beliefOf(compiled, seen));
    expect(best).toMatchObject({ kind: 'prove', repair: 'replace-coil' });
    expect(visit).toBeUndefined();
  });
});
