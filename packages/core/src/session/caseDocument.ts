import type { ModelIdentity } from '../model/modelIdentity.ts';
import type { CaseEvent } from './caseEvent.ts';
import type { UnplacedEvent } from './unplacedEvent.ts';

/** What is known of an invented teaching case besides its events. Money in the model's own unit. */
export interface DemoFacts {
  /** Not a real case. */
  readonly invented: true;
  readonly trueCause: string;
  readonly lesson: string;
  readonly testCost?: number;
  readonly repairCost?: number;
  readonly totalCost?: number;
}

/** A case as it is saved and shared; `loadCase` reads versions 1 and 2 too. `title` is the one it began with; later ones are events. */
export interface CaseDocument {
  readonly format: 'faultodds-case';
  readonly version: 3;
  readonly id: string;
  readonly title: string;
  /** The model whose names the events use. Absent in hand-written cases and in those of older versions. */
  readonly model?: ModelIdentity;
  readonly demo?: DemoFacts;
  readonly events: readonly CaseEvent[];
  /** What the model does not know. Absent where there is nothing. */
  readonly unplaced?: readonly UnplacedEvent[];
}
