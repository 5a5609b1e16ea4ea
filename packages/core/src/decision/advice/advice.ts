import type { Money } from '../cost/money.ts';
import type { Price } from '../cost/price.ts';
import type { ProofOfRepair } from './proofOfRepair.ts';
import type { TestNotNow } from './testNotNow.ts';

/** What one outcome of a test would lead to. */
export interface OutcomeForecast {
  readonly outcome: string;
  readonly probability: number;
  /** Expected cost from there to a confirmed repair. */
  readonly expectedCost: Money;
  /** The most likely causes then, at most five. */
  readonly ranking: readonly { readonly cause: string; readonly probability: number }[];
}

/** A test as a next step. */
export interface TestAdvice {
  readonly test: string;
  readonly price: Price;
  /** Expected cost saved by knowing the result, before its price; never negative. */
  readonly grossValue: Money;
  /** `grossValue` less the price. */
  readonly netValue: Money;
  /** Expected cost to a confirmed repair when this test is done next, its price included. */
  readonly expectedCostWith: Money;
  readonly informationGainBits: number;
  /** Access operations still to be opened for it, in order. */
  readonly accessToOpen: readonly string[];
  /** Caution ids of the test and of the access to open. */
  readonly cautions: readonly string[];
  readonly outcomes: readonly OutcomeForecast[];
}

/** One repair in a sequence: tried, checked, and the next one tried if the fault stays. */
export interface RepairStep {
  readonly repair: string;
  /** Chance that it is reached. */
  readonly reached: number;
  /** Chance that this step cures the fault, seen from now. */
  readonly cures: number;
  /** The repair alone. */
  readonly price: Price;
  /** Checking it afterwards. */
  readonly check: Price;
  readonly accessToOpen: readonly string[];
  readonly cautions: readonly string[];
}

/** The best sequence of repairs without any further test, ended by a referral. */
export interface RepairPlan {
  readonly expectedCost: Money;
  readonly steps: readonly RepairStep[];
  /** Chance that none of the steps cures and the case is handed on. */
  readonly referred: number;
  readonly referralFee: Money;
}

/** What to do next. */
export interface Advice {
  /** `prove`: the latest entry is a repair that seems to have cured; driving proves it. */
  readonly best:
    | { readonly kind: 'test'; readonly test: string }
    | { readonly kind: 'repair'; readonly repair: string }
    | { readonly kind: 'refer' }
    | { readonly kind: 'prove'; readonly repair: string };
  /** Expected cost to a confirmed repair when `best` is followed; of a proof, the price of its drive. */
  readonly expectedCost: Money;
  /** What proves the repair; only with `best` of kind `prove`. */
  readonly proof?: ProofOfRepair;
  readonly repairNow: RepairPlan;
  /** Best first: by net value, then by information per money. */
  readonly tests: readonly TestAdvice[];
  readonly notNow: readonly TestNotNow[];
}
