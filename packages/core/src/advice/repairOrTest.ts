import type { Belief } from '../belief/belief.ts';
import { sweptFactsOf } from '../belief/beliefOf.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { accessBits } from '../cost/accessBits.ts';
import { actionThresholds, type ActionThresholds } from './actionThresholds.ts';
import type { Advice } from './advice.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import { defaultPrices } from '../cost/defaultPrices.ts';
import type { Money } from '../cost/money.ts';
import { advise } from './advise.ts';
import { costOfSequence, planRepairs, compileRepairs } from '../repairs/planRepairs.ts';
import { repairFactsOf, repairsFailed } from '../repairs/repairFactsOf.ts';
import { makeStepFacts } from '../steps/makeStepFacts.ts';
import type { ProposedRepair } from '../steps/proposedRepair.ts';
import type { ProposedTest } from '../steps/proposedTest.ts';
import { makeTariff } from '../cost/tariff.ts';

/** Repairing now against one more test, both as expected cost to a confirmed repair. */
export interface RepairOrTest {
  /** `prove`: the latest entry is a repair that seems to have cured; both figures are for the case that the fault comes back. */
  readonly better: 'repair' | 'test' | 'refer' | 'prove';
  /** The first step is `undefined` when a referral at once is the best way without a test. */
  readonly repairNow: (ProposedRepair | { readonly repair: undefined }) & { readonly expectedCost: Money };
  /** The best single test; `undefined` when none is left. */
  readonly testFirst: (ProposedTest & { readonly expectedCost: Money }) | undefined;
  /** What the better choice saves against the other. */
  readonly saving: Money;
  /** For the leading cause and the best test; `undefined` where no probability of it would change what is done first. */
  readonly thresholds: CauseThresholds | undefined;
}

/** Between which probabilities of one cause the best test is worth its price, as far as this cause alone is concerned. */
export interface CauseThresholds extends ActionThresholds {
  readonly cause: string;
  readonly probability: number;
  readonly repair: ProposedRepair;
  readonly test: ProposedTest;
  /** Outcomes of the test that speak for the cause. */
  readonly positive: readonly string[];
}

/** Whether to repair now or to test once more, with both figures, and the thresholds of the leading cause.
 *
 * The thresholds compare doing the cause's repair first with doing what would be done if it were not the cause: the benefit is what
 * that saves when it is the cause, the loss what it wastes when it is not. Outcomes likelier under the cause count as positive.
 * @throws EvidenceError as `advise` does
 * @example
 * ```ts
 * const choice = repairOrTest(pump, beliefOf(pump, { context: {}, observations: [] }));
 * choice.better; // 'test'
 * choice.saving; // { amount: 10.99, currency: 'unit' }
 * choice.thresholds?.testTreatmentThreshold; // 0.6165
 * ```
 * Source: Pauker & Kassirer 1980, New England Journal of Medicine 302:1109-1117. */
export function repairOrTest(compiled: CompiledModel, belief: Belief, circumstances: Circumstances = {}): RepairOrTest {
  const advice = advise(compiled, belief, circumstances);
  const { repairNow, tests } = advice;
  const [best] = tests;
  const [first] = repairNow.steps;
  const difference = best === undefined ? Infinity : best.expectedCostWith.amount - repairNow.expectedCost.amount;
  return {
    better: advice.best.kind === 'prove' ? 'prove' : difference < 0 ? 'test' : first === undefined ? 'refer' : 'repair',
    repairNow: {
      ...(first === undefined ? { repair: undefined } : bareRepair(first)),
      expectedCost: repairNow.expectedCost,
    },
    testFirst: best === undefined ? undefined : { ...bareTest(best), expectedCost: best.expectedCostWith },
    saving: { ...repairNow.expectedCost, amount: Number.isFinite(difference) ? Math.abs(difference) : 0 },
    thresholds: thresholdsOf(compiled, belief, circumstances, advice),
  };
}

/** A test with what goes with a step, and nothing else. */
function bareTest({ test, price, minutes, accessToOpen, accessToClose, cautions }: ProposedTest): ProposedTest {
  return { test, price, minutes, accessToOpen, accessToClose, cautions };
}

function bareRepair({ repair, price, minutes, accessToOpen, accessToClose, cautions }: ProposedRepair): ProposedRepair {
  return { repair, price, minutes, accessToOpen, accessToClose, cautions };
}

function thresholdsOf(
  compiled: CompiledModel,
  belief: Belief,
  circumstances: Circumstances,
  { tests: [best] }: Advice,
): CauseThresholds | undefined {
  const { posterior, outcomeGivenCause } = sweptFactsOf(compiled, belief);
  const probability = posterior.reduce((a, b) => Math.max(a, b), 0);
  if (best === undefined || probability >= 1) return undefined;
  const at = posterior.indexOf(probability);
  const tariff = makeTariff(compiled, circumstances.prices ?? defaultPrices(compiled.model), belief.facts.context);
  const open = accessBits(compiled, circumstances.openAccess ?? []);
  const facts = repairFactsOf(compiled, tariff, belief.facts);
  const work = compileRepairs(facts);
  const failed = repairsFailed(compiled, belief.facts);

  const isIt = new Float64Array(posterior.length);
  isIt[at] = 1;
  const isNot = posterior.map((p, c) => (c === at ? 0 : p / (1 - probability)));
  const [repair] = planRepairs(work, isIt, open, failed).repairs;
  const elsewhere = planRepairs(work, isNot, open, failed).repairs;
  if (repair === undefined || elsewhere[0] === repair) return undefined;
  const rest = elsewhere.filter((index) => index !== repair);
  const cost = (of: Float64Array, sequence: readonly number[]): number => costOfSequence(work, of, open, sequence);
  // left alone, the cause is met late: its repair comes after the others, where it stands, or never
  const late = [elsewhere, [...rest, repair]].reduce((a, b) => (cost(isIt, b) < cost(isIt, a) ? b : a));
  const benefit = cost(isIt, late) - cost(isIt, [repair, ...rest]);
  const loss = cost(isNot, [repair, ...rest]) - cost(isNot, late);
  if (benefit <= 0 || loss <= 0) return undefined;
  const { id } = compiled.model.repairs[repair]!;

  const { outcomes } = compiled.tests.get(best.test)!;
  const table = outcomeGivenCause.get(best.test)!;
  const given = (of: Float64Array, o: number): number =>
    of.reduce((sum, p, c) => sum + p * table[c * outcomes.length + o]!, 0);
  const positive = outcomes.map((_, o) => o).filter((o) => given(isIt, o) > given(isNot, o));
  const chance = (of: Float64Array): number =>
    Math.min(
      1,
      positive.reduce((sum, o) => sum + given(of, o), 0),
    );
  return {
    cause: compiled.causes[at]!,
    probability,
    repair: { repair: id, ...makeStepFacts(compiled, tariff)({ kind: 'repair', repair: id }, open) },
    test: bareTest(best),
    positive: positive.map((o) => outcomes[o]!),
    ...actionThresholds({
      benefit,
      loss,
      testPrice: best.price.amount + (best.needless?.counted.amount ?? 0),
      sensitivity: chance(isIt),
      falsePositiveRate: chance(isNot),
    }),
  };
}
