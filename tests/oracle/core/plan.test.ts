import { compileModel, advise, parseModel, beliefOf, type Facts, type Model } from '@faultodds/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomFacts, randomModel } from './randomModel.ts';

// Expected cost of repair, written down once more from its definition: shares no code with the packages. 1e-9 relative: sums of money.
const seed = 20261125;
const seeds = fc.noShrink(fc.tuple(fc.nat(), fc.nat()));

/** Facts without repairs on record, nor tests of their kind: what was tried is not proposed again, and a specialist does not do it again. */
function factsWithoutRepairs(model: Model, seed: number): Facts {
  const { context, observations } = randomFacts(model, seed);
  const isRepair = (id: string): boolean => model.repairs.some(({ sameAs }) => sameAs?.test === id);
  return { context, observations: observations.filter((one) => one.kind === 'result' && !isRepair(one.test)) };
}

type Belief = Readonly<Record<string, number>>;

function closureOf(model: Model, ids: readonly string[]): ReadonlySet<string> {
  const found = new Set<string>();
  const visit = (id: string): void => {
    found.add(id);
    model.access.find((one) => one.id === id)!.requires.forEach(visit);
  };
  ids.forEach(visit);
  return found;
}

function priceOfRepair(model: Model, id: string, open: ReadonlySet<string>): number {
  const repair = model.repairs.find((one) => one.id === id)!;
  const spared = [...closureOf(model, repair.access)]
    .filter((access) => open.has(access))
    .map((access) => model.access.find((one) => one.id === access)!)
    .reduce((sum, access) => sum + access.openMinutes.best + access.closeMinutes.best, 0);
  const minutes = Math.max(model.leastRepairMinutes.best, repair.minutes.best - spared);
  return (minutes * model.labourPerHour.best) / 60 + repair.parts.best;
}

/** Cost of trying these repairs in this order, each checked, then the referral: averaged over causes one by one. */
function costOf(model: Model, belief: Belief, open: ReadonlySet<string>, sequence: readonly string[]): number {
  const none = new Set<string>();
  const check = (model.verification.checks[0]!.minutes.best * model.labourPerHour.best) / 60;
  const referral = model.repairs.find((one) => one.referral === true)!.id;
  const costs = model.causes.map(({ id: cause }) => {
    let reached = 1;
    let cost = 0;
    sequence.forEach((repair, at) => {
      cost += reached * (priceOfRepair(model, repair, at === 0 ? open : none) + check);
      reached *= 1 - (model.repairs.find((one) => one.id === repair)!.cures[cause]?.best ?? 0);
    });
    const right = model.repairs
      .filter((one) => one.id !== referral && one.cures[cause] !== undefined)
      .map((one) => priceOfRepair(model, one.id, none) + check);
    return (
      belief[cause]! *
      (cost + reached * (priceOfRepair(model, referral, none) + (right.length > 0 ? Math.min(...right) : 0)))
    );
  });
  return costs.reduce((a, b) => a + b, 0);
}

function sequences(ids: readonly string[]): string[][] {
  return [[], ...ids.flatMap((id) => sequences(ids.filter((other) => other !== id)).map((rest) => [id, ...rest]))];
}

test('the expected cost of a plan is the average over causes of what its steps cost', () => {
  fc.assert(
    fc.property(seeds, ([modelSeed, factsSeed]) => {
      const model = parseModel(randomModel(modelSeed));
      const compiled = compileModel(model);
      const belief = beliefOf(compiled, factsWithoutRepairs(model, factsSeed));
      for (const openAccess of [[], ['a0'], ['a2']]) {
        const { repairNow } = advise(compiled, belief, { openAccess });
        const steps = repairNow.steps.map((step) => step.repair);
        const expected = costOf(model, belief.posterior, closureOf(model, openAccess), steps);
        expect(Math.abs(repairNow.expectedCost.amount / expected - 1)).toBeLessThan(1e-9);
      }
    }),
    { seed, numRuns: 150 },
  );
});

test('no plan is dearer than referring at once, or cheaper than the best of all sequences', () => {
  const gaps: number[] = [];
  fc.assert(
    fc.property(seeds, ([modelSeed, factsSeed]) => {
      const model = parseModel(randomModel(modelSeed));
      const compiled = compileModel(model);
      const belief = beliefOf(compiled, factsWithoutRepairs(model, factsSeed));
      const candidates = model.repairs.filter((one) => one.referral !== true).map(({ id }) => id);
      for (const openAccess of [[], ['a1']]) {
        const open = closureOf(model, openAccess);
        const found = advise(compiled, belief, { openAccess }).repairNow.expectedCost.amount;
        const all = sequences(candidates).map((sequence) => costOf(model, belief.posterior, open, sequence));
        const best = Math.min(...all);
        expect(found).toBeLessThan(all[0]! * (1 + 1e-9));
        expect(found).toBeGreaterThan(best * (1 - 1e-9));
        gaps.push(found / best - 1);
      }
    }),
    { seed, numRuns: 60 },
  );
  const sorted = gaps.toSorted((a, b) => a - b);
  console.log(
    `plans against all sequences: median gap ${(100 * sorted[gaps.length >> 1]!).toFixed(2)} %, worst ${(100 * sorted.at(-1)!).toFixed(2)} %, seed ${seed}`,
  );
  // probability over cost is optimal only for one cause per repair and a flat referral (Kadane & Simon 1977); elsewhere it is near
  expect(sorted[gaps.length >> 1]!).toBeLessThan(0.01);
});

test('one cause per repair, nothing open, a referral nobody wants: the plan is the best of all sequences', () => {
  fc.assert(
    fc.property(seeds, ([modelSeed, factsSeed]) => {
      const random = randomModel(modelSeed);
      const dear = { best: 1e6, low: 1e6, high: 1e6, ess: 1, source: 'random' };
      const model = parseModel({
        ...random,
        repairs: random.repairs.map((one) => {
          const [cause, success] = Object.entries(one.cures)[0]!;
          return one.referral === true ? { ...one, parts: dear } : { ...one, cures: { [cause]: success } };
        }),
      });
      const compiled = compileModel(model);
      const facts = factsWithoutRepairs(model, factsSeed);
      const belief = beliefOf(compiled, facts);
      const possible = belief.ranking.filter(({ probability }) => probability > 0).map(({ cause }) => cause);
      const candidates = model.repairs
        .filter((one) => one.referral !== true && possible.some((cause) => one.cures[cause] !== undefined))
        .map(({ id }) => id);
      const best = Math.min(
        ...sequences(candidates).map((sequence) => costOf(model, belief.posterior, new Set(), sequence)),
      );
      const found = advise(compiled, belief).repairNow.expectedCost.amount;
      expect(Math.abs(found / best - 1)).toBeLessThan(1e-9);
    }),
    { seed, numRuns: 60 },
  );
});
