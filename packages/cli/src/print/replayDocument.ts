import {
  caseState,
  modelIdentity,
  type Advice,
  type Belief,
  type CompiledModel,
  type Model,
  type ModelIdentity,
  type Observation,
  type RankedCause,
  type Session,
} from '@faultodds/core';
import type { Explanation } from '@faultodds/core/explanation';
import type { SettledAdvice } from '@faultodds/core/planning';
import type { Engine, Reading } from '@faultodds/core/readings';
import {
  describeNumber,
  describeObservation,
  sentenceForAdvice,
  sentenceForVisit,
  sentenceForObservation,
  sentenceForSettled,
  sentenceForStopping,
  sentencesForNotices,
  sentenceForWarning,
  sentenceWithoutObservation,
} from '@faultodds/core/words';
import { english } from '@faultodds/core/words/en';
import type { Doubt } from './measureDoubt.ts';
import { labelOf } from './labelOf.ts';
import { readingLines } from './printReading.ts';

/** What `faultodds replay --json` prints; the shape is kept, and described in the README of this package. */
export interface ReplayDocument {
  readonly format: 'faultodds-replay';
  readonly version: 1;
  readonly case: {
    readonly id: string;
    readonly title: string;
    readonly invented: boolean;
    /** As the case states it; `suspect` is the cylinder that misfires. */
    readonly engine?: Engine;
    readonly context: Readonly<Record<string, string>>;
  };
  /** What it was worked out with. */
  readonly model: ModelIdentity;
  /** What opening the case had to tell, in sentences: a model that differs, entries without a place. */
  readonly notices: readonly string[];
  readonly intake: readonly RankedCauseWithLabel[];
  readonly observations: readonly {
    readonly id: string;
    readonly what: string;
    /** The numbers as they were read, and what they come to beside the likelihoods. */
    readonly reading?: Reading;
    readonly readingSays?: readonly string[];
    readonly ranking: readonly RankedCauseWithLabel[];
    /** cause -> decibans; null where a result excludes a cause outright. */
    readonly weightDecibans: Readonly<Record<string, number>>;
    readonly why: string;
    readonly without: string;
  }[];
  readonly warnings: readonly string[];
  /** Sentences; none where the results fit together. */
  readonly conflict: readonly string[];
  readonly doubt?: DoubtDocument;
  readonly openAccess: readonly string[];
  readonly advice: Advice & {
    readonly why: string;
    readonly stopping: string;
    /** Several steps ahead: the best step, what it saves, and what every other one costs more to begin with. */
    readonly ahead: SettledAdvice & { readonly why: string };
  };
  readonly ending?: { readonly trueCause: string; readonly lesson: string };
}

/** How sure the ranking and the advice are. */
interface DoubtDocument extends Pick<Doubt, 'ranking' | 'advice' | 'leading'> {
  readonly flips: readonly {
    /** JSON Pointer of the number in the model, and what it says in words. */
    readonly path: string;
    readonly what: string;
    readonly value: number;
    readonly low: number;
    readonly high: number;
    readonly at: number;
    readonly cause: string;
    readonly withinRange: boolean;
  }[];
}

/** A cause of a ranking with its label. */
interface RankedCauseWithLabel {
  readonly cause: string;
  readonly label: string;
  readonly probability: number;
}

/** A replayed case as data. @param limits at most so many causes per ranking, tests and repairs; all by default. */
export function replayDocument(
  {
    compiled,
    session,
    explanation,
    belief,
    advice,
    settled,
    conflict,
    doubt,
  }: {
    readonly compiled: CompiledModel;
    readonly session: Session;
    readonly explanation: Explanation;
    readonly belief: Belief;
    readonly advice: Advice;
    readonly settled: SettledAdvice;
    readonly conflict: readonly string[];
    readonly doubt: Doubt | undefined;
  },
  { top = Infinity, steps = Infinity }: { readonly top?: number; readonly steps?: number } = {},
): ReplayDocument {
  const { model } = compiled;
  const { id, title, engine, context, openAccess } = caseState(session);
  const labelled = (ranking: readonly RankedCause[]): RankedCauseWithLabel[] =>
    ranking
      .slice(0, top)
      .map(({ cause, probability }) => ({ cause, label: labelOf(model.causes, cause), probability }));
  const { demo } = session;
  return {
    format: 'faultodds-replay',
    version: 1,
    case: { id, title, invented: demo !== undefined, ...(engine === undefined ? {} : { engine }), context },
    model: modelIdentity(model),
    notices: sentencesForNotices(model, session.notices, english),
    intake: labelled(explanation.beliefs[0].ranking),
    observations: explanation.observations.map((step, at) => ({
      id: step.observation.id,
      what: describeObservation(model, step.observation, english),
      ...readingOf(compiled, step.observation),
      ranking: labelled(explanation.beliefs[at + 1]?.ranking ?? []),
      weightDecibans: step.weightDecibans,
      why: sentenceForObservation(model, step, english),
      without: sentenceWithoutObservation(model, explanation, at, english),
    })),
    warnings: belief.warnings.map((warning) => sentenceForWarning(model, belief.facts, warning, english)),
    conflict,
    ...(doubt === undefined ? {} : { doubt: doubtDocument(compiled, doubt) }),
    openAccess,
    advice: {
      why: sentenceForAdvice(model, advice, english),
      ...inOneGo(model, advice),
      stopping: sentenceForStopping(model, advice, english),
      ahead: { why: sentenceForSettled(model, settled, english), ...settled },
      ...advice,
      tests: advice.tests.slice(0, steps),
      repairNow: { ...advice.repairNow, steps: advice.repairNow.steps.slice(0, steps) },
    },
    ...(demo === undefined ? {} : { ending: { trueCause: demo.trueCause, lesson: demo.lesson } }),
  };
}

/** What is done in one go with the best step, in words. */
function inOneGo(model: Model, { best, visit }: Advice): { readonly inOneGo?: string } {
  return visit === undefined || best.kind !== 'test'
    ? {}
    : { inOneGo: sentenceForVisit(model, visit, best.test, english) };
}

function readingOf(
  compiled: CompiledModel,
  observation: Observation,
): { reading?: Reading; readingSays?: readonly string[] } {
  if (observation.kind !== 'result' || observation.reading === undefined) return {};
  const { reading } = observation;
  return { reading, readingSays: readingLines(compiled, { ...observation, reading }) };
}

function doubtDocument({ model }: CompiledModel, { ranking, advice, leading, flips }: Doubt): DoubtDocument {
  return {
    ranking,
    advice,
    leading,
    flips: flips.flatMap(({ path, value, low, high, flip }) =>
      flip === undefined ? [] : [{ path, what: describeNumber(model, path, english), value, low, high, ...flip }],
    ),
  };
}
