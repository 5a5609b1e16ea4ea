import type { ModelIdentity } from '../model/modelIdentity.ts';
import type { StepFacts } from '../steps/stepFacts.ts';
import type { Money } from '../cost/money.ts';

/** What comes of a step of a plan. */
export interface PlanBranch {
  /** Outcome id of a test; `cured`, `not-cured` after a repair; `referred`. */
  readonly outcome: string;
  /** Given that the step is reached. */
  readonly probability: number;
  /** What is done then; left out where the plan ends or is folded. */
  readonly then?: PlanStep;
}

/** One step of a plan. Its price, minutes and cautions include the check after a repair; the price of a referral is the expected cost, the
 * right repair included. */
export interface PlanStep extends StepFacts {
  readonly kind: 'test' | 'repair' | 'refer';
  /** Id of the test or repair. */
  readonly id: string;
  /** Probability that the step is reached. */
  readonly reached: number;
  /** From this step to a confirmed repair, the step included. */
  readonly expectedCost: Money;
  readonly branches: readonly PlanBranch[];
  /** Steps that follow but are not written out. */
  readonly folded: number;
  /** Nobody has looked yet whether a test is worth its price here: it is what would be done without one. Absent where somebody has. */
  readonly examined?: false;
}

/** What a plan costs over all that may happen. The cost of a referral depends on the cause, so its spread counts too. */
export interface CostSpread {
  readonly expected: Money;
  readonly median: Money;
  readonly ninetiethPercentile: Money;
  readonly worst: Money;
}

/** A contingent plan: what to do first, and what to do after each result. */
export interface Plan {
  readonly format: 'faultodds-plan';
  readonly version: 1;
  /** The model it was made with; absent where the problem was made of tables. */
  readonly model?: ModelIdentity;
  readonly solver: string;
  readonly cost: CostSpread;
  /** No plan costs less than this, where the solver knows a bound. */
  readonly lowerBound: Money;
  /** The plan is at most this share of its cost dearer than the best possible one. */
  readonly certifiedGap: number;
  readonly root: PlanStep;
}
