import type { ModelIdentity } from '../model/modelIdentity.ts';
import type { StepFacts } from '../steps/stepFacts.ts';
import type { ClosedForTest } from '../compiled/closedForTest.ts';
import type { RepairFacts } from '../repairs/repairFacts.ts';
import type { Action } from './action.ts';

/** A test as an action of a decision problem. */
export interface TestAction {
  readonly id: string;
  readonly outcomes: readonly string[];
  /** Tests, by index, whose question this one answers too: not proposed after it. */
  readonly answers: readonly number[];
  /** Results, by index, of which one has to be known before it can be done; none: it can be done from the start. */
  readonly follows: readonly { readonly test: number; readonly outcome: number }[];
  /** Of a test that needs the fault present: it may sleep, and then the test is made again. */
  readonly asleep?: AsleepRun;
}

/** A run of a test that finds the fault asleep: it tells nothing, and is made once more under the conditions that bring the fault on. */
interface AsleepRun {
  /** cause -> chance that the fault sleeps. */
  readonly chance: Float64Array;
  /** What the second run costs: its labour, the access as it stands. */
  readonly again: StepCost;
}

/** A repair, followed by a check, as an action of a decision problem. */
export interface RepairAction {
  readonly id: string;
  /** Tests, by index, whose question the failed repair answers. */
  readonly answers: readonly number[];
}

/** What one step costs: money in the problem's currency, and minutes. */
export interface StepCost {
  readonly money: number;
  readonly minutes: number;
}

/** What may be spent from the start on; beyond it only the referral is left. Default: no limit. */
export interface Limits {
  readonly money?: number;
  readonly minutes?: number;
}

/** Results known since the start of a problem, without their order, and what tests would show given each cause and them. One object per
 * set and problem; `memo` holds what was computed already. */
export interface EvidenceSet {
  readonly key: string;
  /** Test and outcome, by index, in the order in which this set was first reached. */
  readonly results: readonly { readonly test: number; readonly outcome: number }[];
  readonly memo: { readonly tables: Map<number, Float64Array>; readonly after: Map<number, EvidenceSet> };
}

/** What is believed, open, tried and spent at one point of a plan. */
export interface DecisionState {
  /** States of equal keys do not differ in what can follow. */
  readonly key: string;
  readonly evidence: EvidenceSet;
  /** P(cause); borrowed, do not write. */
  readonly posterior: Float64Array;
  /** Open access, as bits. */
  readonly open: number;
  /** Repairs that failed, by index, ascending. */
  readonly tried: readonly number[];
  /** test -> 1 when done or its question answered. */
  readonly closedTests: Uint8Array;
  readonly spent: StepCost;
  /** Probability, seen from the start of the problem, of the results and failed repairs that led here. */
  readonly chance: number;
}

/** Ways in which a cause shows: the cause with a state of everything its tests read, so that tests are independent given one. Not all
 * of them: the most probable ones. */
export interface Configurations {
  /** Cause of each. */
  readonly cause: Int32Array;
  /** Probability of each at the start of the problem; their sum is at most 1. */
  readonly weight: Float64Array;
  /** P(outcome | configuration) at [configuration * outcomes + outcome]. */
  readonly outcomeGiven: (test: number) => Float64Array;
}

/** Find and cure one fault at the least expected cost, by tests, repairs (each followed by a check that shows whether it cured, and
 * closes the engine) and a referral. Data and pure functions; solvers know nothing else.
 *
 * Opening a shared access is paid by the first step behind it (closing included); a check closes everything. A referral costs
 * `repairFacts.referralCost[cause]` and ends the plan. What openings that prove needless count for beyond their price
 * (`repairFacts.needless`) is made small with the cost, and is never part of it: limits and what was spent know nothing of it. */
export interface DecisionProblem {
  /** The model it was made of; absent where it was made of tables. */
  readonly model?: () => ModelIdentity;
  readonly currency: string;
  readonly causes: readonly string[];
  readonly tests: readonly TestAction[];
  readonly repairs: readonly RepairAction[];
  /** Id of the referral, and its fee alone. */
  readonly referral: { readonly id: string; readonly fee: number };
  /** Cures and costs (checks included) of `repairs`, by the same index. */
  readonly repairFacts: RepairFacts;
  readonly repairCost: (repair: number, open: number) => StepCost;
  readonly testCost: (test: number, open: number) => StepCost;
  /** What goes with an action where it is proposed: a repair with its check; of a referral its fee. For people; solvers do not read it. */
  readonly stepFacts: (action: Action, open: number) => StepFacts;
  /** Cost of opening and closing one access alone, by bit position, its prerequisites left out. */
  readonly accessCost: Float64Array;
  /** Access bits a test needs, prerequisites included. */
  readonly testAccess: readonly number[];
  /** Access that has to be closed for a test, and with which it cannot be done. */
  readonly closedForTest: readonly ClosedForTest[];
  /** Access bits a repair needs, prerequisites included. */
  readonly repairAccess: readonly number[];
  /** The same set of results is the same object, whatever the order they came in. */
  readonly evidenceAfter: (evidence: EvidenceSet, test: number, outcome: number) => EvidenceSet;
  /** P(outcome | cause, evidence) at [cause * outcomes + outcome]; borrowed. */
  readonly outcomeTable: (evidence: EvidenceSet, test: number) => Float64Array;
  /** The most probable configurations at the start, for bounds. Made when first asked. */
  readonly configurations: () => Configurations;
  readonly limits: Limits;
  readonly start: DecisionState;
}
