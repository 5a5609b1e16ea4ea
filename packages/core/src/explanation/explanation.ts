import type { CauseRanking, RankedCause } from '../belief/belief.ts';
import type { Facts } from '../evidence/facts.ts';
import type { Observation } from '../evidence/observation.ts';

/** Why the ranking is as it is: what every observation did. Data only; `words` makes sentences of it. */
export interface Explanation {
  readonly facts: Facts;
  /** After the intake facts, then after each observation: one more than `observations`. */
  readonly beliefs: readonly [CauseRanking, ...CauseRanking[]];
  /** In the order they were made. */
  readonly observations: readonly ObservationExplanation[];
}

/** How one observation moved the ranking, seen from the moment it was made. Records are keyed by cause; causes ruled out at intake are
 * left out. */
export interface ObservationMove {
  readonly observation: Observation;
  /** cause -> probability just before. */
  readonly before: NumberByCause;
  /** cause -> probability just after. */
  readonly after: NumberByCause;
  /** Weight of evidence for each cause against all others together: 10 log10 of the odds after over the odds before.
   * Positive speaks for the cause. `-Infinity` when the result excludes it outright. */
  readonly weightDecibans: NumberByCause;
  /** P(this observation | cause, everything recorded before it). For a result entered as a likelihood: up to its scale. */
  readonly likelihoodByCause: NumberByCause;
  /** The causes whose probability it moved most, largest move first, at most five; none when it said nothing. */
  readonly movers: readonly MovedCause[];
  /** Of 1000 such engines, how many have each cause: whole numbers that sum to 1000. */
  readonly of1000: { readonly before: NumberByCause; readonly after: NumberByCause };
}

/** What one observation did: how it moved the ranking when it was made, and what it is worth to the case as a whole. */
export interface ObservationExplanation extends ObservationMove {
  /** The same had it been recorded first, right after the intake facts. */
  readonly weightIfFirstDecibans: NumberByCause;
  /** The same had it been recorded last, after all the others: what it still adds to the case now. */
  readonly weightIfLastDecibans: NumberByCause;
  /** The final ranking without this observation. */
  readonly rankingWithout: readonly RankedCause[];
}

/** A cause and how one observation moved it. */
export interface MovedCause {
  readonly cause: string;
  readonly before: number;
  readonly after: number;
  readonly weightDecibans: number;
}

/** A number per cause id. */
export type NumberByCause = Readonly<Record<string, number>>;
