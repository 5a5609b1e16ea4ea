import type { CaseEvent } from './caseEvent.ts';

/** What is known of an invented teaching case besides its events. Money in the model's own unit. */
export interface DemoFacts {
  /** Nobody's real case. */
  readonly invented: true;
  readonly trueCause: string;
  readonly lesson: string;
  readonly testCost?: number;
  readonly repairCost?: number;
  readonly totalCost?: number;
}

/** A case as it is saved and shared; `loadCase` reads version 1 too. `title` is the one it began with; later ones are events. */
export interface CaseDocument {
  readonly format: 'faultodds-case';
  readonly version: 2;
  readonly id: string;
  readonly title: string;
  readonly demo?: DemoFacts;
  readonly events: readonly CaseEvent[];
}
