import type { Limits } from './decisionProblem.ts';

/** A decision problem written out as tables. Access is named by index; what one requires must come before it. */
export interface ProblemTables {
  /** P(cause), sums to 1. */
  readonly prior: readonly number[];
  /** Cost of opening and closing, and the access that has to be open before. */
  readonly access?: readonly {
    readonly cost: number;
    readonly requires?: readonly number[];
    /** Opening it counts for `needlessOpening` beyond its cost where no repair of the true cause needs it. */
    readonly opensEngine?: boolean;
  }[];
  readonly tests: readonly {
    readonly id: string;
    readonly cost: number;
    readonly access?: number;
    /** Access that is closed for it, with what stands on it (its own too, when it is named), and with which it cannot be done. */
    readonly closes?: readonly number[];
    readonly impossibleWith?: readonly number[];
    /** P(outcome | cause) at [cause][outcome]; tests are independent given the cause. */
    readonly outcomeGivenCause: readonly (readonly number[])[];
    readonly answers?: readonly number[];
    /** It may find the fault asleep, and is then made again: P(asleep | cause), and what that costs. */
    readonly asleep?: { readonly chance: readonly number[]; readonly again: number };
    /** A follow-up: results, by test and outcome, of which one has to be known before. */
    readonly follows?: readonly { readonly test: number; readonly outcome: number }[];
  }[];
  /** `cost` with its check, without access; `cures` is P(cured | cause) by cause. */
  readonly repairs: readonly {
    readonly id: string;
    readonly cost: number;
    readonly access?: number;
    readonly cures: readonly number[];
    readonly answers?: readonly number[];
  }[];
  /** Cost of the referral by cause, the right repair included. */
  readonly referralCost: readonly number[];
  /** Default 0. */
  readonly needlessOpening?: number;
  readonly open?: readonly number[];
  readonly limits?: Limits;
  readonly currency?: string;
}
