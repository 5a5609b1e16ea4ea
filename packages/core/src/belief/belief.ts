import type { Facts } from '../evidence/facts.ts';

/** A cause with its probability now and at intake. */
export interface RankedCause {
  readonly cause: string;
  readonly probability: number;
  readonly prior: number;
}

/** Something about the evidence itself that a reader should know. */
export interface BeliefWarning {
  /** `same-fact`: two pieces of evidence tell one fact; `repeated`: one test entered again; `asleep`: the fault was not present. */
  readonly kind: 'same-fact' | 'repeated' | 'asleep';
  /** Observation ids, or `context:<feature>`. */
  readonly items: readonly string[];
  /** What the model says about it: the shared fact and how it is treated. */
  readonly shared: string;
  readonly treatment: string;
}

/** The ranking of causes, given the facts. Probabilities are keyed by id and sum to 1. */
export interface CauseRanking {
  readonly facts: Facts;
  /** cause -> probability after the intake facts, before any observation; ruled-out causes are 0. */
  readonly prior: Readonly<Record<string, number>>;
  /** cause -> probability now. */
  readonly posterior: Readonly<Record<string, number>>;
  /** Possible causes, most likely first. */
  readonly ranking: readonly RankedCause[];
  /** Cause groups, most likely first: probability that a cause of the group is behind the fault. */
  readonly groups: readonly { readonly group: string; readonly probability: number }[];
  /** Causes that the intake facts exclude (or that need an intake fact which is not stated). */
  readonly ruledOut: readonly string[];
  /** Natural logarithm. */
  readonly logProbabilityOfEvidence: number;
}

/** What is believed, given the facts: the ranking, and what every test would show. */
export interface Belief extends CauseRanking {
  /** test -> outcome -> probability now, for every test that applies. */
  readonly predictive: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly warnings: readonly BeliefWarning[];
}
