import type { Facts } from '../evidence/facts.ts';
import type { Dependence } from '../model/model.ts';

/** A cause with its probability now and at intake. */
export interface RankedCause {
  readonly cause: string;
  readonly probability: number;
  readonly prior: number;
}

/** Something about the evidence itself that a reader should know: ids only, `sentenceForWarning` words it. `items` are the ids of the
 * observations it is about, or `context:<feature>`. */
export type BeliefWarning =
  /** Both parts of a pair that the model calls dependent (or of overlapping intake facts: `same-fact`) are on record. Both count in
   * full, except what asks the same question: that shares one likelihood. `a` and `b` as the model names them. */
  | {
      readonly kind: Exclude<Dependence, 'modelled'>;
      readonly a: string;
      readonly b: string;
      readonly items: readonly string[];
    }
  /** A test was entered more than once: a repeat counts only for what the first run did not tell. */
  | { readonly kind: 'repeated'; readonly test: string; readonly items: readonly string[] }
  /** A test that needs the fault was run while it was not present: its result says nothing. */
  | { readonly kind: 'asleep'; readonly test: string; readonly items: readonly string[] }
  /** A follow-up is on record, and nothing that it could look closer at: its numbers take that for granted. */
  | { readonly kind: 'look-missing'; readonly test: string; readonly items: readonly string[] };

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
