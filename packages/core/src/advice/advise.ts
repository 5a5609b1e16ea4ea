import type { Belief } from '../belief/belief.ts';
import type { SweptFacts } from '../belief/sweepFacts.ts';
import { sweptFactsOf } from '../belief/beliefOf.ts';
import type { CompiledModel, CompiledTest } from '../compiled/compiledModel.ts';
import { makeStepFacts } from '../steps/makeStepFacts.ts';
import type { NextStep } from '../steps/nextStep.ts';
import type { Step } from '../steps/step.ts';
import type { StepFacts } from '../steps/stepFacts.ts';
import { accessBits } from '../cost/accessBits.ts';
import type { Advice, NeedlessOpening, OutcomeForecast, RepairPlan, TestAdvice } from './advice.ts';
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
import { expectedNeedless } from '../repairs/needlessOpenings.ts';
import type { RepairFacts } from '../repairs/repairFacts.ts';
import { proofOfRepair } from '../verification/proofOfRepair.ts';
import { repairFactsOf, repairsFailed } from '../repairs/repairFactsOf.ts';
import { makeTariff, moneyOf, priceOf, type Tariff } from '../cost/tariff.ts';
import { openAfterTest } from '../problem/openAfterTest.ts';
import { firstAmongEquals, type Contender } from './firstAmongEquals.ts';
import { lookBefore } from './lookBefore.ts';
import { visitOf, type VisitCandidate } from './visitOf.ts';
import { makeFollowUps } from './makeFollowUps.ts';
import { costAfterLook, type FollowUpFacts } from '../repairs/costAfterLook.ts';

const CAUSES_SHOWN = 5;
const LIKELY = 0.5;

/** What to do next: every possible test with its price and what knowing its result would save (one step ahead), which of those about as good
 * as the best to begin with, what is done in one go with it, and the best
 * sequence of repairs without any test. Access that is open already costs nothing more.
 *
 * Value of a test: expected cost of repair without it, less with it, where after each result either the best repair sequence for the
 * new belief or the old one is followed: so knowing more is never worth less than nothing. A result that calls for a follow-up is worth what
 * is best after it, the follow-up first or none.
 *
 * Prices are what is paid. Expected costs count beside it, once for each opening of the engine that proves needless, what the prices (or the
 * model) say such an opening costs beyond its price; each step says how much of that is its own.
 *
 * Where no test saves more than what counts as about the same and the first repair is more likely than not the right one, it is repaired.
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

  const plan = describePlan({ compiled, tariff, factsOf, work, swept, open, now }, repairs.referralFee);
  const [firstRepair] = plan.steps;
  const contenders = tests.map(({ test, grossValue, netValue }): Contender & VisitCandidate => {
    const { index } = compiled.tests.get(test)!;
    return { test, index, grossValue: grossValue.amount, netValue: netValue.amount };
  });
  const proof = proofOfRepair(compiled, belief.facts, circumstances);
  const aboutTheSame = compiled.model.aboutTheSame?.best ?? 0;
  const gain = contenders[0]?.netValue ?? 0;
  // nobody tests on for a few units where the repair is more likely than not to be the right one
  const isEnough = firstRepair !== undefined && firstRepair.cures >= LIKELY && gain <= aboutTheSame * now.expectedCost;
  const paying = isEnough ? -1 : firstAmongEquals(contenders, now.expectedCost, aboutTheSame);
  // where no test pays, the part is looked at before it is bought
  const look =
    paying >= 0 || firstRepair === undefined
      ? undefined
      : lookBefore(compiled, tariff, swept, firstRepair.repair, open, tests);
  const chosen = look === undefined ? paying : tests.indexOf(look);
  const bestTest = tests[chosen];
  const visit =
    bestTest === undefined || proof !== undefined
      ? undefined
      : visitOf(
          compiled,
          tariff,
          factsOf,
          open,
          contenders[chosen]!,
          contenders.filter((_, at) => at !== chosen),
          compiled.model.leastRepairMinutes.best,
        );
  const others = tests.filter((_, at) => at !== chosen);
  const rest = {
    repairNow: plan,
    tests: bestTest === undefined ? tests : [bestTest, ...others],
    ...(visit === undefined ? {} : { visit }),
    notNow,
  };
  if (proof !== undefined) {
    const { check: _, accept: __, order: ___, ...drive } = proof;
    return { best: { kind: 'prove', ...drive }, expectedCost: drive.price, proof, ...rest };
  }
  const best: NextStep =
    bestTest !== undefined
      ? {
          kind: 'test',
          test: bestTest.test,
          ...factsOf({ kind: 'test', test: bestTest.test }, open),
          ...(look === undefined ? {} : { onTheWayTo: firstRepair!.repair }),
        }
      : firstRepair === undefined
        ? { kind: 'refer', ...factsOf({ kind: 'repair', repair: referralOf(compiled) }, open) }
        : {
            kind: 'repair',
            repair: firstRepair.repair,
            ...factsOf({ kind: 'repair', repair: firstRepair.repair }, open),
          };
  return { best, expectedCost: bestTest === undefined ? plan.expectedCost : bestTest.expectedCostWith, ...rest };
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
  const openAfter = openAfterTest(tariff, index, open);
  const { closes } = tariff.closedForTest[index]!;
  const stillOpen = open & ~closes;
  // what is closed for it and then needed again is paid again
  const without = stillOpen === open ? now : planRepairs(work, posterior, stillOpen, failed);
  const cost = tariff.test(index, open);
  const needless = needlessOf(work.facts, tariff, tariff.testAccess[index]! & ~open, posterior);
  const again = tariff.again(index);
  const ifAsleep = test.faultMustBeActive
    ? {
        chance: posterior.reduce((sum, p, c) => sum + p * (1 - compiled.activeFractions[c]!), 0),
        price: moneyOf(tariff, again.total),
        minutes: again.minutes,
      }
    : undefined;
  const counted = cost.total + (ifAsleep?.chance ?? 0) * again.total + (needless?.counted.amount ?? 0);
  let after = 0;
  const called = new Map<number, number>();
  const forecasts = outcomes.map((outcome, o): OutcomeForecast => {
    const probability = predictive[o]!;
    const then = posteriorAfter(posterior, table, count, o, probability);
    const { expectedCost: best, followUp } = costAfterLook(work, then, openAfter, failed, followUpsOf(index, o));
    const asBefore = costOfSequence(work, then, stillOpen, without.repairs);
    if (followUp >= 0 && best < asBefore) called.set(followUp, (called.get(followUp) ?? 0) + probability);
    const expectedCost = Math.min(best, asBefore);
    after += probability * expectedCost;
    return { outcome, probability, expectedCost: moneyOf(tariff, expectedCost), ranking: topCauses(compiled, then) };
  });
  // equal in exact arithmetic when the result changes nothing; rounding must not make it a loss
  const gross = Math.max(0, without.expectedCost - after);
  const expectedCostWith = without.expectedCost - gross + counted;
  return {
    test: test.id,
    ...factsOf({ kind: 'test', test: test.id }, open),
    breakdown: priceOf(tariff, cost),
    ...(needless === undefined ? {} : { needless }),
    followUps: [...called].map(([at, chance]) => {
      const { id } = compiled.model.tests[at]!;
      return { test: id, ...factsOf({ kind: 'test', test: id }, openAfter), chance };
    }),
    ...(ifAsleep === undefined ? {} : { ifAsleep }),
    grossValue: moneyOf(tariff, gross),
    netValue: moneyOf(tariff, now.expectedCost - expectedCostWith),
    expectedCostWith: moneyOf(tariff, expectedCostWith),
    informationGainBits: informationGain(posterior, table, predictive),
    outcomes: forecasts,
  };
}

/** What the openings of a step count for beyond their price; `undefined` where none can prove needless. */
function needlessOf(
  { needless }: RepairFacts,
  tariff: Tariff,
  opened: number,
  posterior: Float64Array,
): NeedlessOpening | undefined {
  const expected = expectedNeedless(needless, opened, posterior);
  const counted = needless.amount * expected;
  return counted === 0 ? undefined : { expected, counted: moneyOf(tariff, counted) };
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
  { compiled, tariff, factsOf, work, swept, open, now }: Omit<Situation, 'failed' | 'followUpsOf'>,
  referralFee: number,
): RepairPlan {
  const { repairs, expectedCost } = now;
  const remaining = Float64Array.from(swept.posterior);
  let reached = 1;
  const steps = repairs.map((index, at) => {
    const openNow = at === 0 ? open : 0;
    const needless = needlessOf(work.facts, tariff, tariff.repairAccess[index]! & ~openNow, remaining);
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
      ...(needless === undefined ? {} : { needless }),
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
