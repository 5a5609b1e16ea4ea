import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import { sweepModel } from '../compiled/sweepModel.ts';
import type { Belief } from '../belief/belief.ts';
import { evidenceOf } from '../evidence/evidenceOf.ts';
import { likelihoodOfRuns } from '../evidence/likelihoodOfRuns.ts';
import { sweptFactsOf } from '../belief/beliefOf.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Test } from '../model/model.ts';
import { modelIdentity } from '../model/modelIdentity.ts';
import { accessBits } from '../cost/accessBits.ts';
import { checkCircumstances } from '../cost/checkCircumstances.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import { compileConfigurations } from './compileConfigurations.ts';
import type { DecisionProblem, EvidenceSet, Limits, StepCost, TestAction } from './decisionProblem.ts';
import { defaultPrices } from '../cost/defaultPrices.ts';
import { limitsSchema } from './limitsSchema.ts';
import { makeEvidenceAdder, noEvidence } from './evidenceAfter.ts';
import { findTestsNotNow } from '../steps/findTestsNotNow.ts';
import { repairFactsOf, repairsFailed } from '../repairs/repairFactsOf.ts';
import { startState } from './startState.ts';
import { makeTariff } from '../cost/tariff.ts';
import { makeStepFacts } from '../steps/makeStepFacts.ts';

/** A case as a decision problem: the tests that are possible now, each once, with their exact likelihoods given the cause and all results
 * so far (mechanisms make tests depend on each other); all repairs that have not failed; the referral.
 *
 * - A repair followed by a check either cures or not; its chance given the cause is the model's, whatever was seen before.
 * - What needs the engine back together can be done once it is closed.
 * - A follow-up can be done once one of the results it follows is known.
 * - A test that needs the fault may find it asleep, and is then made again: that is paid, the result is that of the fault present.
 * @throws EvidenceError circumstances or a belief that are none of this model @throws OptionError limits that are no limits
 * @example compileCaseProblem(compiled, belief).tests.some(({ id }) => id === 'coil-swap') // false, it is on record */
export function compileCaseProblem(
  compiled: CompiledModel,
  belief: Belief,
  circumstances: Circumstances = {},
  limits: Limits = {},
): DecisionProblem {
  checkCircumstances(compiled, circumstances);
  checkOptions(limitsSchema, limits, '/limits');
  const { model } = compiled;
  const swept = sweptFactsOf(compiled, belief);
  const prices = circumstances.prices ?? defaultPrices(model);
  const tariff = makeTariff(compiled, prices, belief.facts.context);
  const reasons = new Map(findTestsNotNow(compiled, belief, circumstances).map(({ test, reason }) => [test, reason]));
  const isWaiting = (id: string): boolean => reasons.get(id) === 'nothing-to-follow';
  // a follow-up whose looks cannot be done any more is none
  const canBeDone = ({ id, follows = [] }: Test): boolean =>
    !reasons.has(id) ||
    reasons.get(id) === 'engine-apart' ||
    (isWaiting(id) && follows.some((look) => canBeDone(compiled.tests.get(look.test)!.test)));
  const tests = swept.tests.filter(({ test }) => canBeDone(test));
  const testAt = new Map(tests.map(({ test }, at) => [test.id, at]));
  const looksOf = ({ id, follows = [] }: Test): TestAction['follows'] =>
    isWaiting(id)
      ? follows.flatMap((look) => {
          const at = testAt.get(look.test);
          if (at === undefined) return [];
          return look.outcomes.map((outcome) => ({ test: at, outcome: tests[at]!.outcomes.indexOf(outcome) }));
        })
      : [];
  const sameQuestion = (id: string): readonly number[] =>
    (compiled.structure.questions.get(id) ?? []).flatMap((name) => (name === id ? [] : (testAt.get(name) ?? [])));

  const facts = repairFactsOf(compiled, tariff, belief.facts);
  const failed = new Set(repairsFailed(compiled, belief.facts));
  const candidates = facts.candidates.filter((index) => !failed.has(index));
  const repairAccess = candidates.map((index) => tariff.repairAccess[index]!);
  const referral = model.repairs.find((repair) => repair.referral === true);

  const asleepChance = compiled.activeFractions.map((active) => 1 - active);
  const again = (index: number): StepCost => {
    const { total, minutes } = tariff.again(index);
    return { money: total, minutes };
  };
  const factsOf = makeStepFacts(compiled, tariff);
  const start = noEvidence();
  tests.forEach(({ test }, at) => start.memo.tables.set(at, swept.outcomeGivenCause.get(test.id)!));
  const onRecord = evidenceOf(compiled, belief.facts);
  const likelihoodsOf = likelihoodsByEvidence(onRecord, (result) => {
    const support = new Float64Array(tests[result.test]!.outcomes.length);
    support[result.outcome] = 1;
    return likelihoodOfRuns(compiled, tests[result.test]!, [{ support, faultActive: 'yes' }]);
  });
  const outcomeTable = (evidence: EvidenceSet, test: number): Float64Array => {
    const known = evidence.memo.tables.get(test);
    if (known !== undefined) return known;
    // whoever asks about several tests will ask about all: together they cost less
    const asked = evidence.memo.tables.size < ASKED_SINGLY ? [test] : notKnown(evidence, tests.length, test);
    const swept = sweepModel(compiled, {
      likelihoods: likelihoodsOf(evidence),
      targets: asked.map((at) => tests[at]!.table),
    });
    for (const at of asked) evidence.memo.tables.set(at, swept.targets.get(tests[at]!.table.id)!);
    return evidence.memo.tables.get(test)!;
  };

  return {
    model: () => modelIdentity(model),
    currency: prices.currency,
    causes: compiled.causes,
    tests: tests.map(({ test, index, outcomes }) => ({
      id: test.id,
      outcomes,
      answers: sameQuestion(test.id),
      follows: looksOf(test),
      ...(test.faultMustBeActive ? { asleep: { chance: asleepChance, again: again(index) } } : {}),
    })),
    repairs: candidates.map((index) => {
      const { id, sameAs } = model.repairs[index]!;
      const asked =
        sameAs === undefined
          ? []
          : [...(testAt.has(sameAs.test) ? [testAt.get(sameAs.test)!] : []), ...sameQuestion(sameAs.test)];
      return { id, answers: asked };
    }),
    referral: { id: referral?.id ?? 'refer', fee: facts.referralFee },
    repairFacts: {
      cures: candidates.map((index) => compiled.cures[index]!),
      candidates: candidates.map((_, at) => at),
      costFrom: (repair, open) => facts.costFrom(candidates[repair]!, open),
      access: repairAccess,
      needless: facts.needless,
      referralCost: facts.referralCost,
    },
    repairCost: memoByOpen(candidates.length, (repair, open) => {
      const work = tariff.repair(candidates[repair]!, open);
      return { money: work.total + tariff.check.total, minutes: work.minutes + tariff.check.minutes };
    }),
    testCost: memoByOpen(tests.length, (test, open) => {
      const { total, minutes } = tariff.test(tests[test]!.index, open);
      return { money: total, minutes };
    }),
    stepFacts: (action, open) => {
      if (action.kind === 'test') return factsOf({ kind: 'test', test: tests[action.test]!.test.id }, open);
      if (action.kind === 'refer') return factsOf({ kind: 'repair', repair: referral?.id ?? '' }, open);
      return factsOf({ kind: 'proved-repair', repair: model.repairs[candidates[action.repair]!]!.id }, open);
    },
    accessCost: tariff.accessCost,
    testAccess: tests.map(({ index }) => tariff.testAccess[index]!),
    closedForTest: tests.map(({ index }) => tariff.closedForTest[index]!),
    repairAccess,
    evidenceAfter: makeEvidenceAdder(),
    outcomeTable,
    configurations: once(() => compileConfigurations(compiled, onRecord, swept.posterior, tests)),
    limits,
    start: startState({
      evidence: start,
      posterior: swept.posterior,
      open: accessBits(compiled, circumstances.openAccess ?? []),
      tests: tests.length,
    }),
  };
}

const ASKED_SINGLY = 2;

/** One test, and all that are not done and were not asked for after these results. */
function notKnown({ results, memo }: EvidenceSet, count: number, one: number): readonly number[] {
  const done = new Set(results.map(({ test }) => test));
  return Array.from({ length: count }, (_, at) => at).filter(
    (at) => at === one || (!memo.tables.has(at) && !done.has(at)),
  );
}

/** Likelihood factors of everything on record and of the results since, one list per set of results. */
function likelihoodsByEvidence(
  onRecord: readonly LikelihoodFactor[],
  factorOf: (result: EvidenceSet['results'][number]) => LikelihoodFactor | undefined,
): (evidence: EvidenceSet) => readonly LikelihoodFactor[] {
  const known = new WeakMap<EvidenceSet, readonly LikelihoodFactor[]>();
  return (evidence) => {
    const already = known.get(evidence);
    if (already !== undefined) return already;
    const factors = [...onRecord, ...evidence.results.flatMap((result) => factorOf(result) ?? [])];
    known.set(evidence, factors);
    return factors;
  };
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}

function memoByOpen<T>(count: number, ask: (index: number, open: number) => T): (index: number, open: number) => T {
  const known = new Map<number, T[]>();
  return (index, open) => {
    let row = known.get(open);
    if (row === undefined) {
      row = Array.from({ length: count }, (_, at) => ask(at, open));
      known.set(open, row);
    }
    return row[index]!;
  };
}
