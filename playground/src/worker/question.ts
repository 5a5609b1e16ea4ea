import type { Advice, Circumstances, Facts, IntakeQuestion, Model, Problem, RankedCause } from '@faultodds/core';
import type { CredibleRanking, EvidenceConflict, AdviceStability, LeaderSensitivity } from '@faultodds/core/doubt';
import type { MomentRanking } from '@faultodds/core/explanation';
import type { CostlyStep, Plan, SettledAdvice, SolverProgress, WhatItTakes } from '@faultodds/core/planning';

/** What is answered away from the page because it takes longer than a frame. */
export type Question =
  | { readonly kind: 'conflict' | 'toAsk' | 'sensitivity' | 'pairs' | 'history'; readonly facts: Facts }
  | { readonly kind: 'ranking'; readonly facts: Facts; readonly draws: number }
  | { readonly kind: 'advice'; readonly facts: Facts; readonly circumstances: Circumstances; readonly draws: number }
  | {
      readonly kind: 'ahead';
      readonly facts: Facts;
      readonly circumstances: Circumstances;
      /** Situations examined in all. Default: what core takes for settled. */
      readonly steps?: number;
    }
  | { readonly kind: 'trial'; readonly facts: Facts; readonly circumstances: Circumstances }
  | { readonly kind: 'plan'; readonly facts: Facts; readonly circumstances: Circumstances }
  | {
      readonly kind: 'whatItTakes';
      readonly facts: Facts;
      readonly circumstances: Circumstances;
      readonly step: CostlyStep;
    };

/** A search for a plan as it stands. */
export interface PlanSoFar {
  /** Bounds and situations examined. */
  readonly progress: SolverProgress;
  /** Written out now and then; between, only the bounds are told. */
  readonly plan?: Plan;
}

/** What comes back, by kind of question. */
export interface Answers {
  readonly conflict: EvidenceConflict;
  readonly toAsk: readonly IntakeQuestion[];
  readonly ranking: CredibleRanking;
  readonly sensitivity: LeaderSensitivity;
  /** Causes and pairs of causes, most likely first. */
  readonly pairs: readonly RankedCause[];
  readonly advice: AdviceStability;
  /** The best step, several steps ahead. */
  readonly ahead: SettledAdvice;
  /** The case with the numbers changed: the ranking first, then the best step with it. */
  readonly trial: { readonly ranking: readonly RankedCause[]; readonly best?: Advice['best'] };
  readonly plan: PlanSoFar;
  /** Where the ranking stood after the intake facts and after each observation. */
  readonly history: readonly MomentRanking[];
  readonly whatItTakes: WhatItTakes;
}

/** An answer with its kind; a better one of the same kind takes its place. */
export type Answer = {
  readonly [Kind in keyof Answers]: { readonly kind: Kind; readonly answer: Answers[Kind] };
}[keyof Answers];

/** A number of the model set to another value, by its JSON Pointer. */
export interface ChangedNumber {
  readonly path: string;
  readonly value: number;
}

/** Kinds whose worker soon hears that they are no longer wanted: they are answered in turns, or over within a few frames. */
export const kindsGivenUp: ReadonlySet<Question['kind']> = new Set([
  'ahead',
  'conflict',
  'toAsk',
  'ranking',
  'advice',
  'plan',
  'whatItTakes',
]);

/** What the page sends: the model once, then questions, each list in the order it is to be answered and in place of the one before; or that
 * no answer is wanted any more. */
export type Request =
  | { readonly kind: 'model'; readonly model: Model }
  | { readonly kind: 'stop' }
  | {
      readonly kind: 'questions';
      readonly id: number;
      readonly changes: readonly ChangedNumber[];
      readonly questions: readonly Question[];
    };

/** What the worker sends. */
export type Reply =
  | { readonly kind: 'answer'; readonly id: number; readonly answer: Answer }
  | { readonly kind: 'finished'; readonly id: number }
  | {
      readonly kind: 'failed';
      readonly id: number;
      readonly message: string;
      /** What core refused, to be worded by the page; none where it was no refusal. */
      readonly problems: readonly Problem[];
    };
