import { misfire } from '@faultodds/misfire';
import { expect, test } from 'vitest';
import { smallModel } from '../../../../tests/fixtures/smallModel.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import { diagnosability } from './diagnosability.ts';

const small = compileModel(
  smallModel({
    causes: { a: 1, b: 1, c: 1 },
    tests: {
      sharp: { p: { a: { yes: 0.9, no: 0.1 }, else: { yes: 0.1, no: 0.9 } }, price: 10 },
      blunt: { p: { a: { yes: 0.7, no: 0.3 }, else: { yes: 0.3, no: 0.7 } }, price: 20 },
      dear: { p: { b: { yes: 0.95, no: 0.05 }, else: { yes: 0.05, no: 0.95 } }, price: 900 },
    },
  }),
);

test('a blunter and dearer test is dominated by the sharp one; nothing dominates the only test that knows b', () => {
  expect(diagnosability(small).dominated).toEqual([{ test: 'blunt', by: 'sharp' }]);
});

test('two causes that only a dear test separates are a hard pair, with that test named', () => {
  const { hardPairs } = diagnosability(small);
  expect(hardPairs.find(({ a, b }) => a === 'b' && b === 'c')).toEqual({
    a: 'b',
    b: 'c',
    separation: 0,
    dearerTest: 'dear',
  });
  expect(diagnosability(small, { affordable: 1000 }).hardPairs.some(({ a, b }) => a === 'b' && b === 'c')).toBe(false);
});

test('the provenance of the misfire model adds up, and judgement is not passed off as anything else', () => {
  const { provenance, bareJudgement } = diagnosability(compileModel(parseModel(misfire)));
  expect(provenance.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  expect(provenance[0]!.kind).toBe('judgement');
  expect(provenance[0]!.share).toBeGreaterThan(0.9);
  expect(bareJudgement.every(({ ess }) => ess < 6)).toBe(true);
});
