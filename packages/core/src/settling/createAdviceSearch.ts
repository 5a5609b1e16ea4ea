import type { Belief } from '../belief/belief.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { advise } from '../advice/advise.ts';
import type { Advice } from '../advice/advice.ts';
import { accessBits } from '../cost/accessBits.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import { defaultPrices } from '../cost/defaultPrices.ts';
import type { Money } from '../cost/money.ts';
import { makeTariff } from '../cost/tariff.ts';
import type { Action } from '../problem/action.ts';
import { compileCaseProblem } from '../problem/compileCaseProblem.ts';
import type { DecisionProblem } from '../problem/decisionProblem.ts';
import { createSearch, type Search } from '../solvers/boundedSearch.ts';
import type { SearchOption } from '../solvers/searchNode.ts';
import { makeStepFacts } from '../steps/makeStepFacts.ts';
import type { NextStep } from '../steps/nextStep.ts';
import type { Cancel } from '../turns/cancel.ts';
import type { Turns } from '../turns/turns.ts';
import type { OtherStep, SettledAdvice } from './settledAdvice.ts';

// What somebody waits for between two results, and what is worth more looking: stopping too early costs most. Measured, see tests/bench.
const DEFAULT_STEPS = 12;
const STEPS_BEFORE_STOPPING = 24;

/** How long to look. */
export interface SettleOptions {
  /** Situations examined at most, in all. Default 12; 24 where one step says to repair or to hand the case on. */
  readonly steps?: number;
  /** Looked at after every turn; ends with what there is. */
  readonly signal?: Cancel;
}

/** A search for advice on one case that can be asked again. */
export interface AdviceSearch {
  /** The one-step answer it begins with. */
  readonly advice: Advice;
  /** Looks further, until `steps` situations are examined in all; asked again it goes on from what it has. Now and then with the answer so
   * far. */
  readonly go: (options: SettleOptions) => Turns<SettledAdvice, SettledAdvice>;
}

/** Begins a search for advice: the one-step answer at once, nothing examined yet.
 * @throws EvidenceError as `advise` does */
export function createAdviceSearch(
  compiled: CompiledModel,
  belief: Belief,
  circumstances: Circumstances,
  advice: Advice = advise(compiled, belief, circumstances),
): AdviceSearch {
  const { best: oneStep } = advice;
  const prices = circumstances.prices ?? defaultPrices(compiled.model);
  const open = accessBits(compiled, circumstances.openAccess ?? []);
  const factsOf = makeStepFacts(compiled, makeTariff(compiled, prices, belief.facts.context));
  const moneyOf = (amount: number): Money => ({ amount, currency: prices.currency });
  const stepOf = ({ tests, repairs, referral }: DecisionProblem, action: Action): NextStep => {
    if (action.kind === 'test') {
      const { id: test } = tests[action.test]!;
      return { kind: 'test', test, ...factsOf({ kind: 'test', test }, open) };
    }
    if (action.kind === 'refer') return { kind: 'refer', ...factsOf({ kind: 'repair', repair: referral.id }, open) };
    const { id: repair } = repairs[action.repair]!;
    return { kind: 'repair', repair, ...factsOf({ kind: 'repair', repair }, open) };
  };
  let begun: { readonly problem: DecisionProblem; readonly search: Search } | undefined;
  /** What beginning with each step was taken to cost before anything behind it was looked at. */
  let begunWith: readonly number[] = [];

  // whoever begins with a test that pays loses at most what it costs
  const tolerance = compiled.model.aboutTheSame?.best ?? 0;
  const [first] = advice.tests;
  const isCheap =
    oneStep.kind === 'test' &&
    first !== undefined &&
    first.netValue.amount > 0 &&
    first.grossValue.amount - first.netValue.amount <= tolerance * advice.expectedCost.amount;

  const answer = ({ problem, search }: NonNullable<typeof begun>, isSettled: boolean): SettledAdvice => {
    const options = search.firstSteps();
    const { upper, lower, plan } = search.root;
    // one step knows a little more of the first step than a search that has only begun: what it says is never given up for something dearer
    const known = advice.expectedCost.amount;
    const least = Math.min(upper, known);
    const isOneStep = (option: SearchOption): boolean => isStep(problem, option.action, oneStep);
    const found =
      known <= upper
        ? options.findIndex(isOneStep)
        : options.findIndex((option) => option === plan || isFirst(option, plan));
    // a test stays the first step where beginning with it is about the same; stopping does not: most is lost by stopping too early
    const kept = oneStep.kind === 'test' ? options.findIndex(isOneStep) : -1;
    const isKept = kept >= 0 && (options[kept]!.upper - least <= tolerance * least || isCheap);
    const bestAt = isKept ? kept : found;
    const best = options[bestAt];
    const gained = best === undefined ? 0 : Math.max(0, begunWith[bestAt]! - best.upper);
    const others = options
      .map((option, at): OtherStep & { readonly option: SearchOption } => ({
        option,
        step: stepOf(problem, option.action),
        more: moneyOf(Math.max(0, option.upper - least)),
        isAboutTheSame: option.lower <= least && begunWith[at]! - gained <= least,
      }))
      .filter(({ option }) => option !== best)
      .sort((a, b) => a.more.amount - b.more.amount);
    const before = others.find(({ option }) => isOneStep(option));
    return {
      best: best === undefined || isOneStep(best) ? oneStep : stepOf(problem, best.action),
      expectedCost: moneyOf(least),
      lowerBound: moneyOf(Math.min(lower, least)),
      oneStep,
      differs: before !== undefined,
      saving: before?.more ?? moneyOf(0),
      others: others.map(({ step, more, isAboutTheSame }) => ({ step, more, isAboutTheSame })),
      steps: search.walked(),
      isSettled,
    };
  };

  return {
    advice,
    go: function* ({ steps = oneStep.kind === 'test' ? DEFAULT_STEPS : STEPS_BEFORE_STOPPING, signal }) {
      if (oneStep.kind === 'prove' || (signal?.aborted === true && begun === undefined))
        return unsearched(advice, oneStep.kind === 'prove');
      if (begun === undefined) {
        const problem = compileCaseProblem(compiled, belief, circumstances);
        yield;
        begun = { problem, search: createSearch(problem) };
        yield;
      }
      const { search } = begun;
      const until = (limit: number) => search.go(signal === undefined ? { steps: limit } : { steps: limit, signal });
      if (begunWith.length === 0) {
        yield* silently(until(Math.min(1, steps)));
        begunWith = search.firstSteps().map(({ upper }) => upper);
        if (begunWith.length === 0) return unsearched(advice, false);
      }
      const turns = until(steps);
      for (let turn = turns.next(); turn.done !== true; turn = turns.next()) {
        yield turn.value === undefined ? undefined : answer(begun, false);
      }
      return answer(begun, search.walked() >= steps || search.isExact());
    },
  };
}

/** The one-step answer as it is. */
function unsearched({ best, expectedCost }: Advice, isSettled: boolean): SettledAdvice {
  const nothing = { ...expectedCost, amount: 0 };
  return {
    best,
    expectedCost,
    lowerBound: nothing,
    oneStep: best,
    differs: false,
    saving: nothing,
    others: [],
    steps: 0,
    isSettled,
  };
}

function* silently(turns: Turns<unknown, unknown>): Turns<void> {
  while (turns.next().done !== true) yield;
}

function isStep({ tests, repairs }: DecisionProblem, action: Action, step: NextStep): boolean {
  if (action.kind === 'test') return step.kind === 'test' && tests[action.test]!.id === step.test;
  if (action.kind === 'repair') return step.kind === 'repair' && repairs[action.repair]!.id === step.repair;
  return step.kind === 'refer';
}

/** Whether a sequence of repairs begins with this option. */
function isFirst({ action }: SearchOption, plan: Search['root']['plan']): boolean {
  if (!('repairs' in plan)) return false;
  const [repair] = plan.repairs;
  return repair === undefined ? action.kind === 'refer' : action.kind === 'repair' && action.repair === repair;
}
