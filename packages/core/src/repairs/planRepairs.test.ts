import { describe, expect, test } from 'vitest';
import { smallModel } from '../../../../tests/fixtures/smallModel.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { advise } from '../advice/advise.ts';
import { planRepairs, compileRepairs, type RepairFacts } from './planRepairs.ts';

/** Repairs of given cost, each with its chance of curing by cause. */
function work(repairs: readonly { readonly cost: number; readonly cures: readonly number[] }[], referral: number[]) {
  const facts: RepairFacts = {
    cures: repairs.map(({ cures }) => cures.flatMap((success, cause) => (success > 0 ? [{ cause, success }] : []))),
    candidates: repairs.map((_, at) => at),
    costFrom: (repair) => repairs[repair]!.cost,
    referralCost: Float64Array.from(referral),
  };
  return compileRepairs(facts);
}

describe('repairs that cost nothing', () => {
  // looked for the place of 0/0 among the others for ever
  test('two that surely cure one cause: the second is not needed', () => {
    const free = work(
      [
        { cost: 0, cures: [1, 0] },
        { cost: 0, cures: [1, 0] },
        { cost: 5, cures: [0, 1] },
      ],
      [100, 100],
    );
    expect(planRepairs(free, Float64Array.of(0.6, 0.4), 0)).toEqual({ repairs: [0, 2], expectedCost: 0.4 * 5 });
  });

  test('stand before every other, the likelier one first', () => {
    const free = work(
      [
        { cost: 1e-9, cures: [1, 0, 0] },
        { cost: 0, cures: [0, 1, 0] },
        { cost: 0, cures: [0, 0, 1] },
      ],
      [100, 100, 100],
    );
    expect(planRepairs(free, Float64Array.of(0.7, 0.1, 0.2), 0).repairs).toEqual([2, 1, 0]);
    // however unlikely
    expect(planRepairs(free, Float64Array.of(1 - 1e-12, 1e-12, 0), 0).repairs).toEqual([1, 0]);
  });

  test('a sound model whose labour is free has advice', () => {
    const ready = compileModel(
      smallModel({
        causes: { loose: 2, worn: 1 },
        repairs: {
          tighten: { cures: { loose: 1 } },
          'tighten-again': { cures: { loose: 1 } },
          renew: { cures: { worn: 1 }, parts: 30 },
        },
        labourPerHour: 0,
        referralFee: 500,
      }),
    );
    const { best, expectedCost } = advise(ready, beliefOf(ready, { context: {}, observations: [] }));
    expect(best).toMatchObject({ kind: 'repair', repair: 'tighten' });
    expect(expectedCost.amount).toBeCloseTo(10, 9);
  });
});

// whatever slips through, a plan ends
test.each([
  ['a belief', [NaN, 0.4], 1],
  ['a cost', [0.6, 0.4], NaN],
] as const)('%s that is no number ends in no plan for ever', (_, belief, cost) => {
  const odd = work(
    [
      { cost, cures: [1, 0.5] },
      { cost: 2, cures: [0.3, 1] },
      { cost, cures: [0.9, 0] },
    ],
    [100, 100],
  );
  expect(planRepairs(odd, Float64Array.from(belief), 0).repairs.length).toBeLessThanOrEqual(3);
});
