import type { Dimension } from '../units/dimension.ts';
import type { Quantity } from './quantity.ts';
import type { ConditionalRow } from './row.ts';

/** A numeric reading a test can be entered as. */
export type ReadingModel = MeasuredReading | CountsReading | PartCountsReading;

/** How raw readings become the one number that is judged: the compared value. "Neighbours" are the other cylinders that were read. */
export type Comparison =
  /** The reading itself. */
  | 'suspect-alone'
  /** Suspect over the highest neighbour. */
  | 'suspect-to-highest'
  /** Suspect over the median of the neighbours. */
  | 'suspect-to-neighbours'
  /** Suspect against the median of the neighbours, in per cent of it. */
  | 'suspect-off-neighbours'
  /** Suspect minus the median of the neighbours. */
  | 'suspect-minus-neighbours'
  /** A reading over a reference reading of the same cylinder. */
  | 'to-reference'
  /** A reading minus a reference reading of the same cylinder. */
  | 'minus-reference'
  /** What was lost from a reference, in per cent of it: air fed and air held. */
  | 'loss-from-reference'
  /** Short-term plus long-term fuel trim. */
  | 'trim-total';

/** A named distribution of the compared value, cut off at the range of `wild`. */
export interface ReadingDistribution {
  readonly id: string;
  readonly label: string;
  readonly family: 'normal' | 'lognormal' | 'gamma';
  /** Of the value itself, also for the lognormal. */
  readonly mean: number;
  /** Of the value itself; normal and lognormal. */
  readonly sd?: number;
  /** Gamma only. */
  readonly shape?: number;
  readonly ess: number;
  readonly source: string;
}

/** Which outcomes a compared value from `from` (included) to `to` (excluded) can be called. Bands may overlap. */
export interface ReadingBand {
  readonly outcomes: readonly string[];
  readonly from?: number;
  readonly to?: number;
}

/** A quantity that is measured and compared. */
export interface MeasuredReading {
  readonly kind: 'measured';
  readonly id: string;
  readonly label: string;
  readonly measures: Dimension;
  readonly compare: Comparison;
  /** Of the compared value. */
  readonly unit: string;
  /** The sign of the compared value does not count. Default false. */
  readonly absolute?: boolean;
  /** Its error is independent: not shared with the other readings and outcomes of this test. Default false. */
  readonly ownError?: boolean;
  /** Raw readings outside are refused as slips of the pen; in the canonical unit of `measures`. */
  readonly limits: { readonly low: number; readonly high: number; readonly source: string };
  /** The same for both readings of a pair, where what is lost from a reference is judged: in the canonical unit of pressure. Without it
   * nothing above 0 is refused. */
  readonly referenceLimits?: { readonly low: number; readonly high: number; readonly source: string };
  /** A neighbour that reads more than this many times the median of the neighbours is set aside: a slip (a digit too many, a gauge not
   * zeroed). Of ratios, with three neighbours or more. Without it none is. */
  readonly setAsideAbove?: Quantity;
  readonly distributions: readonly ReadingDistribution[];
  /** P(distribution | mechanisms, cause): first match wins, the last row is the default. A distribution left out of a row has 0. */
  readonly rows: readonly ConditionalRow[];
  /** A share of all readings is wild (gauge not seated, slip of the pen): anything between `low` and `high` alike. */
  readonly wild: { readonly share: number; readonly low: number; readonly high: number; readonly source: string };
  /** Outcome that a compared value outside the range of `wild` means. Without one it says nothing. */
  readonly beyond?: { readonly below?: string; readonly above?: string };
  readonly bands?: readonly ReadingBand[];
  readonly ruleOfThumb: RuleOfThumb;
}

/** A rate of misfires as a Gamma distribution over engines. */
export interface RateDistribution {
  /** Misfires per 1000 firings of the cylinder. */
  readonly mean: number;
  readonly shape: number;
  readonly ess: number;
  readonly source: string;
}

/** Misfire counts of all cylinders over one exposure. */
export interface CountsReading {
  readonly kind: 'counts';
  readonly id: string;
  readonly label: string;
  readonly rates: {
    readonly healthy: RateDistribution;
    readonly fault: RateDistribution;
    readonly scattered: RateDistribution;
  };
  /** The outcome each pattern means: the suspect alone, the suspect and one other, all alike, none. */
  readonly patterns: {
    readonly suspectOnly: string;
    readonly suspectAndOne: string;
    readonly all: string;
    readonly none: string;
  };
  /** Firings of each cylinder that are possible when the exposure was not noted. */
  readonly exposureUnknown: { readonly low: number; readonly high: number; readonly source: string };
  readonly wild: { readonly share: number; readonly source: string };
  readonly ruleOfThumb: RuleOfThumb;
}

/** Misfire counts before and after a part was swapped with another cylinder, or replaced. */
export interface PartCountsReading {
  readonly kind: 'part-counts';
  readonly id: string;
  readonly label: string;
  readonly rates: { readonly healthy: RateDistribution; readonly fault: RateDistribution };
  /** Conditions are never the same twice: the rate before counts as at most this many events for the rate after. */
  readonly carriesOver: { readonly shape: number; readonly source: string };
  /** `follows` only where the part went to another cylinder. */
  readonly outcomes: { readonly follows?: string; readonly stays: string; readonly gone: string };
  readonly wild: { readonly share: number; readonly source: string };
  readonly ruleOfThumb: RuleOfThumb;
}

/** A rule of the trade, in words and in a form that can be computed. It is shown beside the likelihoods, never instead. */
export interface RuleOfThumb {
  readonly text: string;
  readonly source: string;
  readonly limit: RuleLimit;
}

/** When a rule of thumb is met. */
export type RuleLimit =
  /** The lowest of all cylinders is at least this share of the highest. */
  | { readonly kind: 'lowest-to-highest'; readonly atLeast: number }
  /** The compared value lies between. */
  | { readonly kind: 'compared'; readonly atLeast?: number; readonly atMost?: number }
  /** The suspect has more than this share of all misfires counted: "kept" then means that one cylinder stands out. */
  | { readonly kind: 'share-of-all'; readonly moreThan: number }
  /** The misfire is where most of it was counted afterwards; "kept" means that the suspect's share fell. */
  | { readonly kind: 'most-counts' };
