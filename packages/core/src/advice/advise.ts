import type { Belief } from '../belief/belief.ts';
import type { SweptFacts } from '../belief/sweepFacts.ts';
import { sweptFactsOf } from '../belief/beliefOf.ts';
import type { CompiledModel, CompiledTest } from '../compiled/compiledModel.ts';
import { makeStepFacts } from '../steps/makeStepFacts.ts';
import type { NextStep } from '../steps/nextStep.ts';
import type { Step } from '../steps/step.ts';
import type { StepFacts } from '../steps/stepFacts.ts';
import { accessBits } from '../cost/accessBits.ts';
import type { Advice, OutcomeForecast, RepairPlan, TestAdvice } from './advice.ts';
import { checkCircumstances } from '../cost/checkCircumstances.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import { defaultPrices } from '../cost/defaultPrices.ts';
import { findTestsNotNow } from '../steps/findTestsNotNow.ts';
import { informationGain } from '../belief/informationGain.ts';
import {
  costOfSequence,
  planRepairs,
  compileRepairs,
  type RepairSequence,
  type RepairWork,
} from '../repairs/planRepairs.ts';
import { proofOfRepair } from '../verification/proofOfRepair.ts';
import { repairFactsOf, repairsFailed } from '../repairs/repairFactsOf.ts';
import { makeTariff, moneyOf, priceOf, type Tariff } from '../cost/tariff.ts';
import { makeFollowUps } from './makeFollowUps.ts';
import { costAfterLook, type FollowUpFacts } from '../repairs/costAfterLook.ts';

const CAUSES_SHOWN = 5;

/** What to do next: every possible test with its price and what knowing its result would save (one step ahead), and the best
 * sequence of repairs without any test. Access that is open already costs nothing more.
 *
 * Value of a test: expected cost of repair without it, less with it, where after each result either the best repair sequence for the
 * new belief or the old one is followed: so knowing more is never worth less than nothing. A result that calls for a follow-up is worth what
 * is best after it, the follow-up first or none.
 *
 * Once a repair is recorded as having cured, the best step is to prove it; what would be done if the fault came back stays beside it.
 * @throws EvidenceError circumstances or a belief that are none of this model, prices that are no prices
 * @example
 * ```ts
 * const advice = advise(pump, beliefOf(pump, { context: {}, observations: [] }), { openAccess: ['lid-off'] });
 * advice.best.kind; // 'test'
 * advice.expectedCost; // { amount: 115.55, currency: 'unit' }
 * advice.tests.map(({ test }) => test); // ['fuse-look', 'hum', 'vacuum', 'wheel-look']
 * ```
 * Source: one-step lookahead on expected cost of repair, Heckerman, Breese & Rommelse 1995, CACM 38(3):49-57. */
export function advise(compiled: CompiledModel, belief: Belief, circumstances: Circumstances = {}): Advice {
  checkCircumstances(compiled, circumstances);
  const swept = sweptFactsOf(compiled, belief);
  const open = accessBits(compiled, circumstances.openAccess ?? []);
  const tariff = makeTariff(compiled, circumstances.prices ?? defaultPrices(compiled.model), belief.facts.context);
  const repairs = repairFactsOf(compiled, tariff, belief.facts);
  const work = compileRepairs(repairs);
  const failed = repairsFailed(compiled, belief.facts);
  const now = planRepairs(work, swept.posterior, open, failed);
  const factsOf = makeStepFacts(compiled, tariff);

  const notNow = findTestsNotNow(compiled, belief, circumstances).map((one) => ({
    ...one,
    ...factsOf({ kind: 'test', test: one.test }, open),
  }));
  const hidden = new Set(notNow.map(({ test }) => test));
  const waiting = new Set(notNow.flatMap(({ test, reason }) => (reason === 'nothing-to-follow' ? [test] : [])));
  const followUpsOf = makeFollowUps(compiled, swept, tariff, open, waiting);
  const tests = swept.tests
    .filter(({ test }) => !hidden.has(test.id))
    .map((test) => adviseTest({ compiled, tariff, factsOf, work, swept, open, failed, now, followUpsOf }, test))
    .sort((a, b) => b.netValue.amount - a.netValue.amount || gainPerMoney(b) - gainPerMoney(a));

  const [bestTest] = tests;
  const plan = describePlan({ compiled, tariff, factsOf, swept, open, now }, repairs.referralFee);
  // a free test that tells nothing is worth 0 up to rounding, and must not be proposed for it
  const testPays = bestTest !== undefined && bestTest.netValue.amount > 1e-9 * now.expectedCost;
  const [firstRepair] = plan.steps;
  const proof = proofOfRepair(compiled, belief.facts, circumstances);
  const rest = { repairNow: plan, tests, notNow };
  if (proof !== undefined) {
    const { check: _, accept: __, order: ___, ...drive } = proof;
    return { best: { kind: 'prove', ...drive }, expectedCost: drive.price, proof, ...rest };
  }
  const best: NextStep = testPays
    ? { kind: 'test', test: bestTest.test, ...factsOf({ kind: 'test', test: bestTest.test }, open) }
    : firstRepair === undefined
      ? { kind: 'refer', ...factsOf({ kind: 'repair', repair: referralOf(compiled) }, open) }
      : {
          kind: 'repair',
          repair: firstRepair.repair,
          ...factsOf({ kind: 'repair', repair: firstRepair.repair }, open),
        };
  return { best, expectedCost: testPays ? bestTest.expectedCostWith : plan.expectedCost, ...rest };
}

/** Every model has one. */
function referralOf({ model }: CompiledModel): string {
  return model.repairs.find(({ referral }) => referral === true)!.id;
}

interface Situation {
  readonly compiled: CompiledModel;
  readonly tariff: Tariff;
  readonly factsOf: (step: Step, open: number) => StepFacts;
  readonly work: RepairWork;
  readonly swept: SweptFacts;
  readonly open: number;
  readonly failed: readonly number[];
  readonly now: RepairSequence;
  /** The tests that a result would call for, by index of its test and outcome. */
  readonly followUpsOf: (test: number, outcome: number) => readonly FollowUpFacts[];
}

function adviseTest(
  { compiled, tariff, factsOf, work, swept, open, failed, now, followUpsOf }: Situation,
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
  const called = new Map<number, number>();
  const forecasts = outcomes.map((outcome, o): OutcomeForecast => {
    const probability = predictive[o]!;
    const then = posteriorAfter(posterior, table, count, o, probability);
    const { expectedCost: best, followUp } = costAfterLook(work, then, openAfter, failed, followUpsOf(index, o));
    const asBefore = costOfSequence(work, then, open, now.repairs);
    if (followUp >= 0 && best < asBefore) called.set(followUp, (called.get(followUp) ?? 0) + probability);
    const expectedCost = Math.min(best, asBefore);
    after += probability * expectedCost;
    return { outcome, probability, expectedCost: moneyOf(tariff, expectedCost), ranking: topCauses(compiled, then) };
  });
  // equal in exact arithmetic when the result changes nothing; rounding must not make it a loss
  const gross = Math.max(0, now.expectedCost - after);
  return {
    test: test.id,
    ...factsOf({ kind: 'test', test: test.id }, open),
    breakdown: priceOf(tariff, cost),
    followUps: [...called].map(([at, chance]) => {
      const { id } = compiled.model.tests[at]!;
      return { test: id, ...factsOf({ kind: 'test', test: id }, openAfter), chance };
    }),
    grossValue: moneyOf(tariff, gross),
    netValue: moneyOf(tariff, gross - cost.total),
    expectedCostWith: moneyOf(tariff, now.expectedCost - gross + cost.total),
    informationGainBits: informationGain(posterior, table, predictive),
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
  { compiled, tariff, factsOf, swept, open, now }: Omit<Situation, 'work' | 'failed' | 'followUpsOf'>,
  referralFee: number,
): RepairPlan {
  const { repairs, expectedCost } = now;
  const remaining = Float64Array.from(swept.posterior);
  let reached = 1;
  const steps = repairs.map((index, at) => {
    const openNow = at === 0 ? open : 0;
    let cures = 0;
    for (const { cause, success } of compiled.cures[index]!) {
      cures += remaining[cause]! * success;
      remaining[cause]! *= 1 - success;
    }
    const { id: repair } = compiled.model.repairs[index]!;
    const step = {
      repair,
      ...factsOf({ kind: 'repair', repair }, openNow),
      reached,
      cures,
      breakdown: priceOf(tariff, tariff.repair(index, openNow)),
      check: factsOf({ kind: 'proof-drive' }, 0),
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

function gainPerMoney({ informationGainBits, price }: TestAdvice): number {
  return informationGainBits / Math.max(price.amount, 1e-9);
}
