import { describe, expect, test } from 'vitest';
import { smallModel } from '../../../../tests/fixtures/smallModel.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { advise } from '../advice/advise.ts';
import { createRandom } from '../distributions/random.ts';
import { costOfSequence, planRepairs, compileRepairs, type RepairWork } from './planRepairs.ts';
import type { RepairFacts } from './repairFacts.ts';

/** Repairs of given cost (`open`: with anything open), each with its chance of curing by cause. */
function work(
  repairs: readonly { readonly cost: number; readonly open?: number; readonly cures: readonly number[] }[],
  referral: number[],
) {
  const facts: RepairFacts = {
    cures: repairs.map(({ cures }) => cures.flatMap((success, cause) => (success > 0 ? [{ cause, success }] : []))),
    candidates: repairs.map((_, at) => at),
    costFrom: (repair, open) => (open === 0 ? undefined : repairs[repair]!.open) ?? repairs[repair]!.cost,
    access: repairs.map(() => 0),
    needless: { opens: 0, amount: 0, neededBy: new Int32Array(referral.length) },
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

describe('three repairs that surely cure a cause each, with 0.5, 0.3 and 0.2, for 10, 4 and 6', () => {
  const belief = Float64Array.of(0.5, 0.3, 0.2);
  const three = (last: number, referral: number) =>
    work(
      [
        { cost: 10, open: 1, cures: [1, 0, 0] },
        { cost: 4, cures: [0, 1, 0] },
        { cost: last, cures: [0, 0, 1] },
      ],
      [referral, referral, referral],
    );
  const planned = (last: number, referral: number, open = 0, tried: readonly number[] = []) => {
    const { repairs, expectedCost } = planRepairs(three(last, referral), belief, open, tried);
    return { repairs, cost: Number(expectedCost.toFixed(10)) };
  };

  test('are tried by chance over cost: 0.075, 0.05, 0.033', () => {
    expect(planned(6, 100)).toEqual({ repairs: [1, 0, 2], cost: 4 + 0.7 * 10 + 0.2 * 6 });
  });

  test('end in a referral where going on would cost more', () => {
    expect(planned(150, 100)).toEqual({ repairs: [1, 0], cost: 4 + 0.7 * 10 + 0.2 * 100 });
    expect(planned(6, 3)).toEqual({ repairs: [], cost: 3 });
    // as dear as the referral: no reason to try it
    expect(planRepairs(three(64, 64), Float64Array.of(0.5, 0.25, 0.25), 0).repairs).toEqual([1, 0]);
  });

  test('the first one profits from what is open: 1 instead of 10', () => {
    expect(planned(6, 100, 1)).toEqual({ repairs: [0, 1, 2], cost: 1 + 0.5 * 4 + 0.2 * 6 });
  });

  test('none is tried again', () => {
    expect(planned(6, 100, 0, [1])).toEqual({ repairs: [0, 2], cost: 10 + 0.5 * 6 + 0.3 * 100 });
    expect(planned(6, 100, 1, [0, 2])).toEqual({ repairs: [1], cost: 4 + 0.7 * 100 });
  });

  test('of equals the first in the list is first', () => {
    const even = work(
      [
        { cost: 5, cures: [1, 0] },
        { cost: 5, cures: [0, 1] },
      ],
      [100, 100],
    );
    expect(planRepairs(even, Float64Array.of(0.5, 0.5), 0).repairs).toEqual([0, 1]);
  });
});

test('what an earlier repair left ranks a later one: the wide one first, then the other cause, the spare last', () => {
  const overlapping = work(
    [
      { cost: 10, cures: [0.9, 0.9, 0] },
      { cost: 6, cures: [1, 0, 0] },
      { cost: 9, cures: [0, 0, 1] },
    ],
    [50, 50, 50],
  );
  const { repairs, expectedCost } = planRepairs(overlapping, Float64Array.of(0.4, 0.3, 0.3), 0);
  // 0.63 / 10, 0.4 / 6 = 0.067 is more: the spare first; then 0.27 / 10 = 0.027 after 0.3 / 9 = 0.033
  expect(repairs).toEqual([1, 2, 0]);
  expect(expectedCost).toBeCloseTo(6 + 0.6 * 9 + 0.3 * 10 + 0.03 * 50, 12);
  // with more of the second cause the wide one first: 0.72 / 10 beside 0.4 / 6; left are 0.04 and 0.04
  const wide = planRepairs(overlapping, Float64Array.of(0.4, 0.4, 0.2), 0);
  expect(wide.repairs).toEqual([0, 2, 1]);
  expect(wide.expectedCost).toBeCloseTo(10 + 0.28 * 9 + 0.08 * 6 + 0.04 * 50, 12);
});

test('a sequence costs what is paid while it has not cured, then the referral of what is left', () => {
  const two = work(
    [
      { cost: 10, open: 3, cures: [0.8, 0] },
      { cost: 4, cures: [0.5, 0.5] },
    ],
    [100, 200],
  );
  const belief = Float64Array.of(0.6, 0.4);
  expect(costOfSequence(two, belief, 0, [])).toBeCloseTo(0.6 * 100 + 0.4 * 200, 12);
  // the first leaves 0.12 and 0.4, the second half of both
  expect(costOfSequence(two, belief, 0, [0, 1])).toBeCloseTo(10 + 0.52 * 4 + 0.06 * 100 + 0.2 * 200, 12);
  expect(costOfSequence(two, belief, 1, [0, 1])).toBeCloseTo(3 + 0.52 * 4 + 0.06 * 100 + 0.2 * 200, 12);
  // only the first in the row finds anything open
  expect(costOfSequence(two, belief, 1, [1, 0])).toBeCloseTo(4 + 0.5 * 10 + 0.06 * 100 + 0.2 * 200, 12);
  expect([...belief]).toEqual([0.6, 0.4]);
});

/** Least cost over all sequences. */
function leastOfAll(of: RepairWork, belief: Float64Array, open: number): number {
  const walk = (sequence: readonly number[]): number =>
    [...of.candidates]
      .filter((repair) => !sequence.includes(repair))
      .reduce(
        (least, repair) => Math.min(least, walk([...sequence, repair])),
        costOfSequence(of, belief, open, sequence),
      );
  return walk([]);
}

// Kadane & Simon 1977: by chance over cost where each repair has causes of its own
test('where no two repairs cure the same the plan is the best of all sequences, whatever is open', () => {
  const random = createRandom(4);
  for (let round = 0; round < 60; round += 1) {
    const raw = Array.from({ length: 5 }, () => random());
    const sum = raw.reduce((all, p) => all + p, 0);
    const own = work(
      raw.map((_, at) => {
        const cost = 1 + 20 * random();
        return {
          cost,
          open: cost * (random() < 0.5 ? 1 : random()),
          cures: raw.map((_p, c) => (c === at ? 0.5 + random() / 2 : 0)),
        };
      }),
      raw.map(() => 10 + 60 * random()),
    );
    const belief = Float64Array.from(raw, (p) => p / sum);
    for (const open of [0, 1]) {
      const { repairs, expectedCost } = planRepairs(own, belief, open);
      expect(expectedCost).toBeCloseTo(costOfSequence(own, belief, open, repairs), 10);
      // the referral costs differ by cause, so that the order by chance over cost is the best but for those
      expect(expectedCost).toBeGreaterThanOrEqual(leastOfAll(own, belief, open) - 1e-10);
    }
    const same = { ...own, referralCost: Float64Array.from(raw, () => 1000) };
    for (const open of [0, 1])
      expect(planRepairs(same, belief, open).expectedCost).toBeCloseTo(leastOfAll(same, belief, open), 9);
  }
});

test('where they overlap the cost is that of the sequence, never below the best, seldom far above', () => {
  const random = createRandom(9);
  let [ours, best] = [0, 0];
  for (let round = 0; round < 60; round += 1) {
    const raw = Array.from({ length: 4 }, () => random());
    const sum = raw.reduce((all, p) => all + p, 0);
    const belief = Float64Array.from(raw, (p) => p / sum);
    const mixed = work(
      Array.from({ length: 5 }, () => ({
        cost: 1 + 20 * random(),
        cures: raw.map(() => (random() < 0.5 ? random() : 0)),
      })),
      raw.map(() => 200),
    );
    const { repairs, expectedCost } = planRepairs(mixed, belief, 0);
    expect(new Set(repairs).size).toBe(repairs.length);
    expect(expectedCost).toBeCloseTo(costOfSequence(mixed, belief, 0, repairs), 9);
    const least = leastOfAll(mixed, belief, 0);
    expect(expectedCost).toBeGreaterThanOrEqual(least - 1e-9);
    ours += expectedCost;
    best += least;
  }
  expect(ours / best).toBeLessThan(1.01);
});

describe('openings that prove needless', () => {
  // the first needs the cover (bit 0), the second the cover and the pan (bits 0 and 1), the third nothing; each counts for 100
  const facts: RepairFacts = {
    cures: [[{ cause: 0, success: 1 }], [{ cause: 1, success: 0.5 }], [{ cause: 2, success: 1 }]],
    candidates: [0, 1, 2],
    costFrom: (repair) => [10, 20, 30][repair]!,
    access: [1, 3, 0],
    needless: { opens: 3, amount: 100, neededBy: Int32Array.of(1, 3, 0) },
    referralCost: Float64Array.of(400, 400, 400),
  };
  const ready = compileRepairs(facts);
  const belief = Float64Array.of(0.5, 0.2, 0.3);

  test('count for the causes that are still possible and need none of them, once for each', () => {
    // the second at 0.5: the third cause needs neither; at 0.3 left of 0.4, none is left of the first
    expect(costOfSequence(ready, belief, 0, [0, 1])).toBeCloseTo(10 + 0.3 * 100 + 0.5 * 20 + 0.3 * 200 + 0.4 * 400, 12);
    // the pan is needless for the first cause, the cover is not
    expect(costOfSequence(ready, belief, 0, [1])).toBeCloseTo(20 + 0.5 * 100 + 0.3 * 200 + 0.9 * 400, 12);
    expect(costOfSequence(ready, belief, 0, [2])).toBeCloseTo(30 + 0.7 * 400, 12);
  });

  test('not where it is open already, and again after the check has closed it', () => {
    expect(costOfSequence(ready, belief, 1, [0, 1])).toBeCloseTo(10 + 0.5 * 20 + 0.3 * 200 + 0.4 * 400, 12);
    expect(costOfSequence(ready, belief, 2, [1])).toBeCloseTo(20 + 0.3 * 100 + 0.9 * 400, 12);
  });

  test('put a repair behind others that open nothing', () => {
    const free = compileRepairs({ ...facts, needless: { ...facts.needless, amount: 0 } });
    expect(planRepairs(free, belief, 0).repairs).toEqual([0, 2, 1]);
    const { repairs, expectedCost } = planRepairs(ready, Float64Array.of(0.4, 0.2, 0.4), 0);
    // 0.4 / (10 + 40) beside 0.4 / 30
    expect(repairs[0]).toBe(2);
    expect(expectedCost).toBeCloseTo(costOfSequence(ready, Float64Array.of(0.4, 0.2, 0.4), 0, repairs), 12);
  });

  test('keep a repair from being tried at all where handing on is cheaper', () => {
    const rare = Float64Array.of(0.03, 0, 0.97);
    const only = compileRepairs({ ...facts, candidates: [0] });
    const free = compileRepairs({ ...facts, candidates: [0], needless: { ...facts.needless, amount: 0 } });
    expect(planRepairs(free, rare, 0).repairs).toEqual([0]); // 10 spares 0.03 * 400
    expect(planRepairs(only, rare, 0)).toEqual({ repairs: [], expectedCost: 400 });
    // open already: nothing more is opened by it
    expect(planRepairs(only, rare, 1).repairs).toEqual([0]);
  });
});
