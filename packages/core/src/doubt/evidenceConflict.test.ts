import { expect, test } from 'vitest';
import { smallModel } from '../../../../tests/fixtures/smallModel.ts';
import type { Observation } from '../evidence/observation.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { evidenceConflict } from './evidenceConflict.ts';

// conf(e) = log2( prod P(e_i) / P(e) ): Jensen, Chamberlain, Nordahl & Jensen 1990; Jensen & Nielsen 2007. Values worked by hand.
const twoWitnesses = compileModel(
  smallModel({
    causes: { a: 1, b: 1 },
    tests: {
      first: { p: { a: { yes: 0.9, no: 0.1 }, else: { yes: 0.1, no: 0.9 } } },
      second: { p: { a: { yes: 0.9, no: 0.1 }, else: { yes: 0.1, no: 0.9 } } },
      third: { p: { a: { yes: 0.9, no: 0.1 }, else: { yes: 0.1, no: 0.9 } } },
      coin: { p: { a: { yes: 0.5, no: 0.5 }, else: { yes: 0.5, no: 0.5 } } },
    },
  }),
);
const saw = (test: string, outcome: string): Observation => ({ kind: 'result', id: test, test, outcome });

test('witnesses who agree have negative conflict, who disagree positive', () => {
  const agree = evidenceConflict(twoWitnesses, {
    context: {},
    observations: [saw('first', 'yes'), saw('second', 'yes')],
  });
  expect(agree.totalBits).toBeCloseTo(Math.log2(0.25 / 0.41), 12);
  expect(agree.helpsMost).toBeUndefined();
  const disagree = evidenceConflict(twoWitnesses, {
    context: {},
    observations: [saw('first', 'yes'), saw('second', 'no')],
  });
  expect(disagree.totalBits).toBeCloseTo(Math.log2(0.25 / 0.09), 12);
  expect(disagree.pairs).toHaveLength(1);
});

test('a result that has nothing to do with the others is in no conflict', () => {
  const { items, totalBits } = evidenceConflict(twoWitnesses, {
    context: {},
    observations: [saw('first', 'yes'), saw('coin', 'no')],
  });
  expect(totalBits).toBeCloseTo(0, 12);
  expect(items[1]!.bits).toBeCloseTo(0, 12);
});

test('the one witness against two others is the one whose removal helps most', () => {
  const observations = [saw('first', 'yes'), saw('second', 'no'), saw('third', 'yes')];
  const { helpsMost, totalBits } = evidenceConflict(twoWitnesses, { context: {}, observations });
  expect(totalBits).toBeGreaterThan(0);
  expect(helpsMost?.observation.id).toBe('second');
  expect(helpsMost?.totalBitsWithout).toBeCloseTo(Math.log2(0.25 / 0.41), 12);
});
