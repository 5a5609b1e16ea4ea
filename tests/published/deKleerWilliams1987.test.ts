import { compileModel, advise, beliefOf } from '@faultodds/core';
import { expect, test } from 'vitest';
import { uncheckedModel } from '../fixtures/smallModel.ts';

// de Kleer J., Williams B.C. (1987) Diagnosing multiple faults, Artificial Intelligence 32(1):97-130: three multipliers, two adders,
// inputs 3 2 2 3 3, F = 10 where 12 was due. Circuit from memory, recomputed over the four minimal candidates (the full set shifts the
// third decimal). Check C10. Tolerance 1e-10.
const p = 0.01;
const single = p * (1 - p) ** 4;
const double = p ** 2 * (1 - p) ** 3;
const sees = (outcome: string, other: string) => ({ [outcome]: 1, [other]: 0 });
const compiled = compileModel(
  uncheckedModel({
    causes: { m1: single, a1: single, 'm2-and-m3': double, 'm2-and-a2': double },
    tests: {
      x: { p: { m1: sees('4', '6'), else: sees('6', '4') } },
      y: { p: { 'm2-and-m3': sees('4', '6'), 'm2-and-a2': sees('4', '6'), else: sees('6', '4') } },
      z: { p: { 'm2-and-m3': sees('8', '6'), else: sees('6', '8') } },
    },
    referralFee: 1,
  }),
);
const belief = beliefOf(compiled, { context: {}, observations: [] });

test('the single faults hold 0.495 each, the double ones 0.005 (C10)', () => {
  expect(belief.posterior['m1']).toBeCloseTo(0.495, 12);
  expect(belief.posterior['a1']).toBeCloseTo(0.495, 12);
  expect(belief.posterior['m2-and-m3']).toBeCloseTo(0.005, 12);
  expect(belief.posterior['m2-and-a2']).toBeCloseTo(0.005, 12);
});

test.each([
  ['x', { 4: 0.495, 6: 0.505 }, 0.9999278640456617],
  ['y', { 6: 0.99, 4: 0.01 }, 0.0807931358959113],
  ['z', { 6: 0.995, 8: 0.005 }, 0.04541469233379414],
] as const)('measuring %s: outcomes %j, %d bits (C10)', (point, outcomes, bits) => {
  for (const [outcome, probability] of Object.entries(outcomes)) {
    expect(belief.predictive[point]![outcome]).toBeCloseTo(probability, 12);
  }
  const advice = advise(compiled, belief).tests.find((one) => one.test === point)!;
  expect(advice.informationGainBits).toBeCloseTo(bits, 10);
});

test('X is the best point to measure (C10)', () => {
  // all three are free and save nothing in money here, so information alone ranks them
  expect(advise(compiled, belief).tests.map((one) => one.test)).toEqual(['x', 'y', 'z']);
});
