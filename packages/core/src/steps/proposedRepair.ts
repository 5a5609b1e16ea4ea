import type { StepFacts } from './stepFacts.ts';

/** A repair that is named as something to do. */
export interface ProposedRepair extends StepFacts {
  readonly repair: string;
}
