import {
  type Advice,
  type CaseCosts,
  costsSoFar,
  drivingAdvice,
  modelIdentity,
  needlessOpeningOf,
  type RankedCause,
} from '@faultodds/core';
import { naturalFrequencies } from '@faultodds/core/explanation';
import {
  describeEngine,
  sentenceForAdvice,
  sentenceForNotNow,
  sentenceForObservation,
  sentenceForStopping,
  sentenceForWarning,
  sentencesForNotices,
} from '@faultodds/core/words';
import { coreLanguage } from '../words/coreLanguage.ts';
import { shortChance } from '../words/shortChance.ts';
import { t } from '../words/t.ts';
import type { CaseOnPage } from '../state/caseStore.svelte.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import { moveAt, type RankingHistory } from '../state/rankingHistory.ts';
import { type ProvingView, provingView } from './provingView.ts';

/** Everything the report of a case says, in words. */
export interface ReportView {
  readonly title: string;
  readonly date: string;
  readonly invented: boolean;
  readonly leader: {
    readonly label: string;
    readonly inEngines: string;
    readonly about: string;
    readonly feels: string;
  };
  /** Whether it may be driven, by the gravest cause that is still plausible, and why. */
  readonly driving: { readonly verdict: string; readonly why: string };
  readonly alternatives: readonly string[];
  readonly proving: ProvingView | null;
  readonly steps: readonly ReportStep[];
  readonly total: string;
  readonly advice: string;
  readonly stopping: string;
  readonly cautions: readonly string[];
  /** Of the tests that are named as left undone, beyond those. */
  readonly cautionsLeft: readonly string[];
  readonly car: readonly { readonly label: string; readonly value: string }[];
  readonly ranking: readonly (readonly string[])[];
  readonly certainty: readonly string[];
  readonly left: readonly string[];
  readonly conditions: readonly string[];
  readonly notes: readonly string[];
  readonly remarks: readonly string[];
}

/** One test or repair as it stands in the report. */
interface ReportStep {
  readonly id: string;
  readonly what: string;
  readonly outcome: string;
  readonly cost: string;
  readonly minutes: string;
  readonly leading: string;
  readonly reason: string;
}

const RANKED = 8;
const NAMED = 12;

/** Puts what core says of a case into the order of a report. @param history how its ranking came about. @param date of the report, in words. */
export function reportView(knowledge: Knowledge, now: CaseOnPage, history: RankingHistory, date: string): ReportView {
  const { model, causeLabel } = knowledge;
  const { belief, advice, state, circumstances, session } = now;
  const costs = costsSoFar(knowledge.compiled, session);
  const [first, second, third] = belief.ranking as readonly [RankedCause, ...RankedCause[]];
  const about = knowledge.cause(first.cause);
  const driving = drivingAdvice(model, belief);
  const { labourPerHour, currency, partsFactor } = circumstances.prices;
  const away = model.equipment.filter(({ id }) => !circumstances.equipment.includes(id)).map(({ label }) => label);
  const open = state.openAccess.map(knowledge.accessLabel);
  const notListed = belief.posterior['not-listed'];
  const made = modelIdentity(model);
  const proving = provingView(knowledge, advice.proof);
  return {
    title: state.title,
    date: t.report.made(date),
    invented: session.demo !== undefined,
    leader: {
      label: causeLabel(first.cause),
      inEngines: t.report.inEngines(counted(naturalFrequencies(belief.posterior)[first.cause] ?? 0)),
      about: about?.description ?? '',
      feels: about?.customerFeels ?? '',
    },
    driving: {
      verdict: t.report.driving[driving.driving],
      why: t.report.drivingWhy(
        causeLabel(driving.cause),
        shortChance(driving.probability),
        knowledge.drivenOn(driving.cause),
      ),
    },
    alternatives: [second, third].flatMap((one) =>
      one ? [t.report.alternative(causeLabel(one.cause), shortChance(one.probability))] : [],
    ),
    proving,
    steps: stepsOf(knowledge, now, history, costs),
    total: t.report.total(coreLanguage.formatMoney(costs.total.total), coreLanguage.formatMinutes(costs.total.minutes)),
    advice: sentenceForAdvice(model, advice, coreLanguage),
    stopping: sentenceForStopping(model, advice, coreLanguage),
    cautions: advice.best.cautions.map(knowledge.cautionText),
    cautionsLeft: cautionsLeft(advice).map(knowledge.cautionText),
    car: [
      ...(state.engine === undefined
        ? []
        : [{ label: t.report.engine, value: describeEngine(state.engine, coreLanguage) }]),
      ...model.context.flatMap(({ id, label, values }) => {
        const value = values.find((one) => one.id === state.context[id]);
        return value ? [{ label, value: value.label }] : [];
      }),
    ],
    ranking: belief.ranking
      .slice(0, RANKED)
      .map(({ cause, probability, prior }) => [
        causeLabel(cause),
        shortChance(knowledge.anyEngine.posterior[cause] ?? 0),
        shortChance(prior),
        shortChance(probability),
      ]),
    certainty: [
      second
        ? t.report.certain(
            causeLabel(first.cause),
            shortChance(first.probability),
            causeLabel(second.cause),
            shortChance(second.probability),
          )
        : '',
      notListed === undefined ? '' : t.report.notListed(shortChance(notListed)),
    ].filter((sentence) => sentence !== ''),
    left: leftUndone(knowledge, advice),
    conditions: [
      t.report.prices(
        coreLanguage.formatMoney({ amount: labourPerHour, currency }),
        new Intl.NumberFormat(t.code).format(partsFactor),
        coreLanguage.formatMoney({ amount: needlessOpeningOf(model, circumstances.prices), currency }),
      ),
      away.length > 0 ? t.report.missing(away.join(', ')) : '',
      open.length > 0 ? t.report.stillOpen(open.join(', ')) : '',
      t.report.model(made.id, made.version, made.hash),
    ].filter((sentence) => sentence !== ''),
    notes: state.notes,
    remarks: [
      ...belief.warnings.map((warning) => sentenceForWarning(model, belief.facts, warning, coreLanguage)),
      ...sentencesForNotices(model, session.notices, coreLanguage),
    ],
  };
}

function stepsOf(knowledge: Knowledge, { state }: CaseOnPage, history: RankingHistory, costs: CaseCosts): ReportStep[] {
  const prices = new Map(costs.steps.map((one) => [one.observation, one.price]));
  return state.observations.map((observation, at) => {
    const step = moveAt(history, at);
    const price = prices.get(observation.id);
    const leader = history.moments[at + 1]?.ranking[0];
    const noted = observation.note;
    const { what, outcome } = knowledge.observed(observation);
    const asleep = observation.kind === 'result' ? t.notes.active[observation.faultActive ?? 'yes'] : '';
    return {
      id: observation.id,
      what,
      outcome: [outcome, asleep, noted ?? ''].filter((part) => part !== '').join('; '),
      cost: price ? coreLanguage.formatMoney(price.total) : '',
      minutes: price ? coreLanguage.formatMinutes(price.minutes) : '',
      leading: leader ? t.report.leading(knowledge.causeLabel(leader.cause), shortChance(leader.probability)) : '',
      reason: step ? sentenceForObservation(knowledge.model, step, coreLanguage) : '',
    };
  });
}

/** Nobody left these undone: they are done, or there was nothing to follow up. */
const UNSAID: ReadonlySet<string> = new Set(['already-done', 'nothing-to-follow']);

/** What can hurt in the tests that `leftUndone` names, beyond the advised step. */
function cautionsLeft({ best, tests, notNow }: Advice): readonly string[] {
  const named = [true, false].flatMap((pays) =>
    tests.filter(({ netValue }) => netValue.amount > 0 === pays).slice(0, NAMED),
  );
  const all = [...named, ...notNow.filter(({ reason }) => !UNSAID.has(reason))];
  return [...new Set(all.flatMap(({ cautions }) => cautions))].filter((id) => !best.cautions.includes(id));
}

/** Tests that were not done: those that would pay, those that would not, and those that cannot be done, each with its reason. */
function leftUndone(knowledge: Knowledge, { tests, notNow }: Advice): readonly string[] {
  const named = (pays: boolean): string =>
    tests
      .filter(({ netValue }) => netValue.amount > 0 === pays)
      .slice(0, NAMED)
      .map(({ test, price }) => t.report.leftTest(knowledge.testLabel(test), coreLanguage.formatMoney(price)))
      .join('; ');
  const [pays, costs] = [named(true), named(false)];
  const reasons = notNow
    .filter(({ reason }) => !UNSAID.has(reason))
    .map((one) => sentenceForNotNow(knowledge.model, one, coreLanguage));
  const left = [pays && t.report.leftPays(pays), costs && t.report.leftCosts(costs), ...reasons].filter(
    (sentence) => sentence !== '',
  );
  return left.length > 0 ? left : [t.report.leftNothing];
}

function counted(count: number): string {
  return count < 1 ? t.engines.none : count > 999 ? t.engines.all : String(count);
}
