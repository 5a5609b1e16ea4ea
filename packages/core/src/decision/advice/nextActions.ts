import type { Belief } from '../../belief/belief.ts';
import type { SweptFacts } from '../../belief/sweepFacts.ts';
import { sweptFactsOf } from '../../belief/updateBelief.ts';
import type { CompiledModel, CompiledTest } from '../../model/compiledModel.ts';
import { accessBits, accessIds } from '../cost/accessBits.ts';
import type { Advice, OutcomeForecast, RepairPlan, TestAdvice } from './advice.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import { defaultPrices } from '../cost/defaultPrices.ts';
import { findTestsNotNow } from './findTestsNotNow.ts';
import { informationGain } from './informationGain.ts';
import { costOfSequence, planRepairs, prepareRepairs, type RepairSequence, type RepairWork } from './planRepairs.ts';
import { proofOfRepair } from './proofOfRepair.ts';
import { repairFactsOf, repairsFailed } from '../problem/repairFactsOf.ts';
import { makeTariff, moneyOf, priceOf, type Tariff } from '../cost/tariff.ts';

const CAUSES_SHOWN = 5;

/** What to do next: every possible test with its price and what knowing its result would save (one step ahead), and the best
 * sequence of repairs without any test. Access that is open already costs nothing more.
 *
 * Value of a test: expected cost of repair without it, less with it, where after each result either the best repair sequence for the
 * new belief or the old one is followed: so knowing more is never worth less than nothing.
 *
 * Once a repair is recorded as having cured, the best step is to prove it; what would be done if the fault came back stays beside it.
 * @throws EvidenceError `access-unknown`
 * Source: one-step lookahead on expected cost of repair, Heckerman, Breese & Rommelse 1995, CACM 38(3):49-57. */
export function nextActions(compiled: CompiledModel, belief: Belief, circumstances: Circumstances = {}): Advice {
  const swept = sweptFactsOf(compiled, belief);
  const open = accessBits(compiled, circumstances.openAccess ?? []);
  const tariff = makeTariff(compiled, circumstances.prices ?? defaultPrices(compiled.model), belief.facts.context);
  const repairs = repairFactsOf(compiled, tariff);
  const work = prepareRepairs(repairs);
  const failed = repairsFailed(compiled, belief.facts);
  const now = planRepairs(work, swept.posterior, open, failed);

  const notNow = findTestsNotNow(compiled, belief, circumstances);
  const hidden = new Set(notNow.map(({ test }) => test));
  const tests = swept.tests
    .filter(({ test }) => !hidden.has(test.id))
    .map((test) => adviseTest({ compiled, tariff, work, swept, open, failed, now }, test))
    .sort((a, b) => b.netValue.amount - a.netValue.amount || gainPerMoney(b) - gainPerMoney(a));

  const [bestTest] = tests;
  const plan = describePlan(compiled, tariff, repairs.referralFee, swept.posterior, open, now);
  // a free test that tells nothing is worth 0 up to rounding, and must not be proposed for it
  const testPays = bestTest !== undefined && bestTest.netValue.amount > 1e-9 * now.expectedCost;
  const [firstRepair] = plan.steps;
  const proof = proofOfRepair(compiled.model, belief.facts);
  const rest = { repairNow: plan, tests, notNow };
  if (proof !== undefined) {
    const best = { kind: 'prove', repair: proof.repair } as const;
    return { best, expectedCost: moneyOf(tariff, tariff.check.total), proof, ...rest };
  }
  return {
    best: testPays
      ? { kind: 'test', test: bestTest.test }
      : firstRepair === undefined
        ? { kind: 'refer' }
        : { kind: 'repair', repair: firstRepair.repair },
    expectedCost: testPays ? bestTest.expectedCostWith : plan.expectedCost,
    ...rest,
  };
}

interface Situation {
  readonly compiled: CompiledModel;
  readonly tariff: Tariff;
  readonly work: RepairWork;
  readonly swept: SweptFacts;
  readonly open: number;
  readonly failed: readonly number[];
  readonly now: RepairSequence;
}

function adviseTest(
  { compiled, tariff, work, swept, open, failed, now }: Situation,
  { test, index, outcomes }: CompiledTest,
): TestAdvice {
  const { posterior } = swept;
  const table = swept.outcomeGivenCause.get(test.id)!;
  const count = outcomes.length;
  const predictive = new Float64Array(count);
  for (let c = 0; c < posterior.length; c += 1) {
    for (let o = 0; o < count; o += 1) predictive[o]! += posterior[c]! * table[c * count + o]!;
  }
  const openAfter = open | tariff.testAccess[index]!;
  const cost = tariff.test(index, open);
  let after = 0;
  const forecasts = outcomes.map((outcome, o): OutcomeForecast => {
    const probability = predictive[o]!;
    const then = posteriorAfter(posterior, table, count, o, probability);
    const expectedCost = Math.min(
      planRepairs(work, then, openAfter, failed).expectedCost,
      costOfSequence(work, then, open, now.repairs),
    );
    after += probability * expectedCost;
    return { outcome, probability, expectedCost: moneyOf(tariff, expectedCost), ranking: topCauses(compiled, then) };
  });
  // equal in exact arithmetic when the result changes nothing; rounding must not make it a loss
  const gross = Math.max(0, now.expectedCost - after);
  const missing = tariff.testAccess[index]! & ~open;
  return {
    test: test.id,
    price: priceOf(tariff, cost),
    grossValue: moneyOf(tariff, gross),
    netValue: moneyOf(tariff, gross - cost.total),
    expectedCostWith: moneyOf(tariff, now.expectedCost - gross + cost.total),
    informationGainBits: informationGain(posterior, table, predictive),
    accessToOpen: accessIds(compiled, missing),
    cautions: cautionsOf(compiled, test.cautions, missing),
    outcomes: forecasts,
  };
}

function posteriorAfter(
  posterior: Float64Array,
  table: Float64Array,
  count: number,
  outcome: number,
  probability: number,
): Float64Array {
  const then = posterior.slice();
  if (probability === 0) return then; // an outcome that cannot happen changes nothing and weighs nothing
  for (let c = 0; c < then.length; c += 1) then[c]! *= table[c * count + outcome]! / probability;
  return then;
}

function topCauses({ causes }: CompiledModel, posterior: Float64Array): { cause: string; probability: number }[] {
  const top: number[] = [];
  for (let c = 0; c < posterior.length; c += 1) {
    let at = top.length;
    while (at > 0 && posterior[top[at - 1]!]! < posterior[c]!) at -= 1;
    if (at < CAUSES_SHOWN) top.splice(at, 0, c);
    if (top.length > CAUSES_SHOWN) top.pop();
  }
  return top.map((c) => ({ cause: causes[c]!, probability: posterior[c]! }));
}

function describePlan(
  compiled: CompiledModel,
  tariff: Tariff,
  referralFee: number,
  posterior: Float64Array,
  open: number,
  { repairs, expectedCost }: RepairSequence,
): RepairPlan {
  const remaining = Float64Array.from(posterior);
  let reached = 1;
  const steps = repairs.map((index, at) => {
    const openNow = at === 0 ? open : 0;
    let cures = 0;
    for (const { cause, success } of compiled.cures[index]!) {
      cures += remaining[cause]! * success;
      remaining[cause]! *= 1 - success;
    }
    const repair = compiled.model.repairs[index]!;
    const missing = tariff.repairAccess[index]! & ~openNow;
    const step = {
      repair: repair.id,
      reached,
      cures,
      price: priceOf(tariff, tariff.repair(index, openNow)),
      check: priceOf(tariff, tariff.check),
      accessToOpen: accessIds(compiled, missing),
      cautions: cautionsOf(compiled, repair.cautions, missing),
    };
    reached -= cures;
    return step;
  });
  return {
    expectedCost: moneyOf(tariff, expectedCost),
    steps,
    referred: Math.max(0, reached),
    referralFee: moneyOf(tariff, referralFee),
  };
}

function cautionsOf({ model }: CompiledModel, own: readonly string[], opening: number): readonly string[] {
  return [
    ...new Set([...own, ...model.access.flatMap((access, at) => ((opening & (1 << at)) === 0 ? [] : access.cautions))]),
  ];
}

function gainPerMoney({ informationGainBits, price }: TestAdvice): number {
  return informationGainBits / Math.max(price.total.amount, 1e-9);
}
