import {
  cautionsOfTest,
  type Advice,
  type NextStep,
  type RepairStep,
  type TestAdvice,
  type Visit,
} from '@faultodds/core';
import { sameStep } from '@faultodds/core/doubt';
import {
  sentenceForAsleep,
  sentenceForBetter,
  sentenceForFollowUp,
  sentenceForNeedless,
  sentenceForOther,
  sentenceForSettled,
  sentenceForVisit,
} from '@faultodds/core/words';
import type { Standing } from '../state/standing.ts';
import { coreLanguage } from '../words/coreLanguage.ts';
import { shortChance } from '../words/shortChance.ts';
import { t } from '../words/t.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** What saves less than this prints as nothing. */
const LEAST_SAVING = 0.005;

/** What one outcome would lead to, in words. */
export interface OutcomeView {
  readonly id: string;
  readonly label: string;
  readonly chance: string;
  /** Length of the line under it. */
  readonly probability: number;
  /** The causes that would lead then, most likely first. */
  readonly ranking: readonly { readonly label: string; readonly chance: string }[];
  readonly cost: string;
}

/** What stands in the row of every step: price, time, what it opens and needs, what can hurt. */
export interface StepView {
  readonly id: string;
  readonly label: string;
  readonly price: string;
  readonly minutes: string;
  readonly opens: readonly string[];
  readonly cautions: readonly string[];
}

/** A test as a row of the list. */
export interface TestView extends StepView {
  readonly how: string;
  readonly note: string;
  readonly category: string;
  readonly equipment: readonly { readonly id: string; readonly label: string }[];
  /** What knowing the result saves after its price, or that it would not change what to do. */
  readonly value: string;
  /** What its results may call for, with the price, and what weighs against it beyond its price. */
  readonly besides: readonly string[];
  /** What is done in one go with it, in words; only of the best. */
  readonly visit: string | undefined;
  readonly faultMustBeActive: boolean;
  /** What a second run costs, where the fault may sleep during the first. */
  readonly ifAsleep: string | undefined;
  readonly outcomes: readonly OutcomeView[];
}

/** A repair as a row. */
export interface RepairView extends StepView {
  /** What weighs against it beyond its price. */
  readonly besides: readonly string[];
  /** What beginning with it costs more than the best step; '' until known. */
  readonly more: string;
  readonly chance: string;
}

/** A test of the advice, in words. */
export function testView(knowledge: Knowledge, advice: TestAdvice, visit?: Visit): TestView {
  const test = knowledge.test(advice.test);
  return {
    id: advice.test,
    label: knowledge.testLabel(advice.test),
    how: test?.how ?? '',
    note: test?.note ?? '',
    category: test?.category ?? '',
    price: coreLanguage.formatMoney(advice.price),
    minutes: coreLanguage.formatMinutes(advice.minutes),
    opens: advice.accessToOpen.map(knowledge.accessLabel),
    cautions: cautionsOfTest(advice, visit).map(knowledge.cautionText),
    equipment: (test?.equipment ?? []).map((id) => ({ id, label: knowledge.equipmentLabel(id) })),
    value: valueInWords(advice),
    besides: [
      ...advice.followUps.map((one) => sentenceForFollowUp(knowledge.model, one, coreLanguage)),
      ...needlessInWords(advice),
    ],
    visit: visit === undefined ? undefined : sentenceForVisit(knowledge.model, visit, advice.test, coreLanguage),
    faultMustBeActive: test?.faultMustBeActive ?? false,
    ifAsleep: advice.ifAsleep === undefined ? undefined : sentenceForAsleep(advice.ifAsleep, coreLanguage),
    outcomes: advice.outcomes.map((outcome) => ({
      id: outcome.outcome,
      label: knowledge.outcomeLabel(advice.test, outcome.outcome),
      chance: shortChance(outcome.probability),
      probability: outcome.probability,
      ranking: outcome.ranking
        .slice(0, 3)
        .map(({ cause, probability }) => ({ label: knowledge.causeLabel(cause), chance: shortChance(probability) })),
      cost: coreLanguage.formatMoney(outcome.expectedCost),
    })),
  };
}

function needlessInWords({ needless }: Pick<TestAdvice, 'needless'>): string[] {
  return needless === undefined ? [] : [sentenceForNeedless(needless, coreLanguage)];
}

function valueInWords({ netValue, grossValue }: TestAdvice): string {
  if (netValue.amount > 0) return t.next.saves(coreLanguage.formatMoney(netValue));
  return grossValue.amount > LEAST_SAVING ? t.next.savesLess(coreLanguage.formatMoney(grossValue)) : t.next.noSaving;
}

/** A step of the repair plan, in words. */
function repairView(knowledge: Knowledge, step: RepairStep): RepairView {
  return {
    id: step.repair,
    label: knowledge.repairLabel(step.repair),
    price: coreLanguage.formatMoney(step.price),
    minutes: coreLanguage.formatMinutes(step.minutes),
    opens: step.accessToOpen.map(knowledge.accessLabel),
    // it is done when it is checked: what can hurt on that drive belongs to it
    cautions: [...new Set([...step.cautions, ...step.check.cautions])].map(knowledge.cautionText),
    besides: needlessInWords(step),
    more: '',
    chance: shortChance(step.cures),
  };
}

/** The best test first, then what is done in one go with it, then the others. */
function inOrder({ tests, visit }: Advice, best: NextStep): readonly TestAdvice[] {
  const inVisit = new Set(visit?.tests.map(({ test }) => test));
  const rank = ({ test }: TestAdvice): number =>
    best.kind === 'test' && best.test === test ? 0 : inVisit.has(test) ? 1 : 2;
  return [...tests].sort((a, b) => rank(a) - rank(b));
}

/** Whether one step ahead begins with this test: what is done in one go stands beside that. */
function isBestOf({ best }: Advice, { test }: TestAdvice): boolean {
  return best.kind === 'test' && best.test === test;
}

function stepKeyOf(step: NextStep): string {
  return step.kind === 'test' ? `test ${step.test}` : step.kind === 'repair' ? `repair ${step.repair}` : step.kind;
}

function aheadInWords({ model }: Knowledge, { isOpen, settled, better }: Standing, best: NextStep): string {
  const by = better?.others.find(({ step }) => sameStep(step, best))?.more;
  if (better !== undefined && by !== undefined)
    return sentenceForBetter(model, { best: better.best, by }, coreLanguage);
  if (isOpen) return t.next.looking;
  return settled === undefined || best.kind === 'prove' ? '' : sentenceForSettled(model, settled, coreLanguage);
}

/** Everything that can be done next, in words, best first. */
export interface NextStepsView {
  readonly tests: readonly TestView[];
  readonly repairs: readonly RepairView[];
  /** Id of the best test or repair; '' when the advice is to hand the case on. */
  readonly best: string;
  /** Whether that is a test: then tests stand first. */
  readonly isTest: boolean;
  /** Whether one step ahead says otherwise. */
  readonly differs: boolean;
  /** What looking several steps ahead has come to, in words. */
  readonly ahead: string;
  readonly notHere: readonly { readonly test: string; readonly missing: readonly string[] }[];
}

/** The advice as rows; once a step stands it is first, and the others say what beginning with them costs more. */
export function nextStepsView(knowledge: Knowledge, advice: Advice, standing: Standing): NextStepsView {
  const { settled } = standing;
  const best = settled?.best ?? advice.best;
  const more = new Map(
    settled?.others.map((other) => [stepKeyOf(other.step), sentenceForOther(other, coreLanguage)]) ?? [],
  );
  const isBest = (test: TestAdvice): boolean => best.kind === 'test' && best.test === test.test;
  return {
    tests: inOrder(advice, best).map((test) => {
      const view = testView(knowledge, test, isBest(test) && isBestOf(advice, test) ? advice.visit : undefined);
      // one step's saving is said of no step that several steps judge otherwise
      if (settled?.differs === true && isBest(test)) return { ...view, value: '' };
      return { ...view, value: more.get(`test ${test.test}`) ?? view.value };
    }),
    repairs: advice.repairNow.steps.map((step) => {
      const view = repairView(knowledge, step);
      return { ...view, more: more.get(`repair ${step.repair}`) ?? '' };
    }),
    best: best.kind === 'test' ? best.test : best.kind === 'repair' ? best.repair : '',
    isTest: best.kind === 'test',
    differs: settled?.differs === true,
    ahead: aheadInWords(knowledge, standing, best),
    notHere: advice.notNow
      .filter(({ reason }) => reason === 'equipment')
      .map(({ test, missing }) => ({
        test: knowledge.testLabel(test),
        missing: missing.map(knowledge.equipmentLabel),
      })),
  };
}
