import type { NextStep } from '../steps/nextStep.ts';
import type { ProposedRepair } from '../steps/proposedRepair.ts';
import type { Visit } from './visitOf.ts';
import type { ProposedTest } from '../steps/proposedTest.ts';
import type { StepFacts } from '../steps/stepFacts.ts';
import type { Money } from '../cost/money.ts';
import type { Price } from '../cost/price.ts';
import type { ProofOfRepair } from '../verification/proofOfRepair.ts';
import type { TestNotNow } from '../steps/testNotNow.ts';

/** What one outcome of a test would lead to. */
export interface OutcomeForecast {
  readonly outcome: string;
  readonly probability: number;
  /** Expected cost from there to a confirmed repair. */
  readonly expectedCost: Money;
  /** The most likely causes then, at most five. */
  readonly ranking: readonly { readonly cause: string; readonly probability: number }[];
}

/** A closer look that a test's result would call for. */
export interface FollowUp extends ProposedTest {
  /** Chance that it is called for, seen from before the test. */
  readonly chance: number;
}

/** What the openings of a step count for beyond its price, because they may prove needless: no repair of the true cause needs them. Nobody
 * is paid it, so it is in no price; expected costs have it in them. */
export interface NeedlessOpening {
  /** How many of them are needless, on average. */
  readonly expected: number;
  /** That times what one counts for. */
  readonly counted: Money;
}

/** A test as a next step. */
export interface TestAdvice extends ProposedTest {
  /** What its price is made of. */
  readonly breakdown: Price;
  /** Absent where it opens nothing that could prove needless. */
  readonly needless?: NeedlessOpening;
  /** What its results would call for, where that is worth its price: counted in what it saves, not in its own price. */
  readonly followUps: readonly FollowUp[];
  /** Of a test that needs the fault present: the chance that a run finds it asleep, and what the second run costs then. */
  readonly ifAsleep?: { readonly chance: number; readonly price: Money; readonly minutes: number };
  /** Expected cost saved by knowing the result, and by following it up where that pays, before its price; never negative. */
  readonly grossValue: Money;
  /** `grossValue` less the price, less what has to be opened again for a repair because the test needs it closed, a second run where the first
   * finds the fault asleep, and what its openings count for if they prove needless. */
  readonly netValue: Money;
  /** Expected cost to a confirmed repair when this test is done next, its price included, with what openings that prove needless count for. */
  readonly expectedCostWith: Money;
  readonly informationGainBits: number;
  readonly outcomes: readonly OutcomeForecast[];
}

/** One repair in a sequence: tried, checked, and the next one tried if the fault stays. */
export interface RepairStep extends ProposedRepair {
  /** Chance that it is reached. */
  readonly reached: number;
  /** Chance that this step cures the fault, seen from now. */
  readonly cures: number;
  /** What its price is made of: the repair alone. */
  readonly breakdown: Price;
  /** As far as it is reached; absent where it opens nothing that could prove needless. */
  readonly needless?: NeedlessOpening;
  /** Checking it afterwards, by a drive. */
  readonly check: StepFacts;
}

/** The best sequence of repairs without any further test, ended by a referral. */
export interface RepairPlan {
  readonly expectedCost: Money;
  readonly steps: readonly RepairStep[];
  /** Chance that none of the steps cures and the case is referred. */
  readonly referred: number;
  readonly referralFee: Money;
}

/** What to do next. */
export interface Advice {
  readonly best: NextStep;
  /** Expected cost to a confirmed repair when `best` is followed, with what openings that prove needless count for; of a proof, the price of
   * its drive. */
  readonly expectedCost: Money;
  /** What proves the repair; only with `best` of kind `prove`. */
  readonly proof?: ProofOfRepair;
  readonly repairNow: RepairPlan;
  /** What is done in one go with the best step, when that is a test and there is more behind what it opens or is set up on. */
  readonly visit?: Visit;
  /** The one to begin with first, where any pays; the others by net value, then by information per money. */
  readonly tests: readonly TestAdvice[];
  readonly notNow: readonly TestNotNow[];
}
