import type { Money } from '../cost/money.ts';
import type { NextStep } from '../steps/nextStep.ts';

/** Another way to begin. */
export interface OtherStep {
  readonly step: NextStep;
  /** What beginning with it costs more on average, as far as the search has seen; never negative. */
  readonly more: Money;
  /** The difference is within what the search cannot tell: no bound rules this step out, and were as much gained by looking further behind it
   * as was gained behind the best step, it would be as good. */
  readonly isAboutTheSame: boolean;
}

/** What to do next, several steps ahead. */
export interface SettledAdvice {
  readonly best: NextStep;
  /** Expected cost of the plan that begins with it, with what openings that prove needless count for; of a proof, the price of its drive. */
  readonly expectedCost: Money;
  /** No plan costs less. */
  readonly lowerBound: Money;
  /** What looking one step ahead says (`advise`). */
  readonly oneStep: NextStep;
  /** Whether that is another step than `best`. */
  readonly differs: boolean;
  /** What `best` saves against beginning with that step; 0 where they are the same. */
  readonly saving: Money;
  /** Everything else that can be done now, what costs least more first. */
  readonly others: readonly OtherStep[];
  /** Situations examined. */
  readonly steps: number;
  /** The budget was used up, or nothing is left to find; `false` where a signal ended it before. */
  readonly isSettled: boolean;
}
