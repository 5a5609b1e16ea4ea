import type { StepFacts } from './stepFacts.ts';

/** A test that is named as something to do. */
export interface ProposedTest extends StepFacts {
  readonly test: string;
}
