import { cautionsOfTest, type Advice, type RepairStep, type TestAdvice, type Visit } from '@faultodds/core';
import { sentenceForAsleep, sentenceForFollowUp, sentenceForNeedless, sentenceForVisit } from '@faultodds/core/words';
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
    chance: shortChance(step.cures),
  };
}

/** The best test first, then what is done in one go with it, then the others. */
function inOrder({ tests, visit }: Advice): readonly TestAdvice[] {
  const inVisit = new Set(visit?.tests.map(({ test }) => test));
  const [best, ...others] = tests;
  if (best === undefined) return tests;
  return [best, ...others.filter(({ test }) => inVisit.has(test)), ...others.filter(({ test }) => !inVisit.has(test))];
}

/** Everything that can be done next, in words, best first. */
export interface NextStepsView {
  readonly tests: readonly TestView[];
  readonly repairs: readonly RepairView[];
  /** Id of the best test or repair; '' when the advice is to hand the case on. */
  readonly best: string;
  readonly notHere: readonly { readonly test: string; readonly missing: readonly string[] }[];
}

/** The advice as rows. */
export function nextStepsView(knowledge: Knowledge, advice: Advice): NextStepsView {
  const { best } = advice;
  return {
    tests: inOrder(advice).map((test) =>
      best.kind === 'test' && test.test === best.test
        ? testView(knowledge, test, advice.visit)
        : testView(knowledge, test),
    ),
    repairs: advice.repairNow.steps.map((step) => repairView(knowledge, step)),
    best: best.kind === 'test' ? best.test : best.kind === 'repair' ? best.repair : '',
    notHere: advice.notNow
      .filter(({ reason }) => reason === 'equipment')
      .map(({ test, missing }) => ({
        test: knowledge.testLabel(test),
        missing: missing.map(knowledge.equipmentLabel),
      })),
  };
}
