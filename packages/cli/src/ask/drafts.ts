import type { Engine } from '@faultodds/core/readings';

/** What was typed or answered while working on a case and is not recorded in it: nothing has to be entered twice. */
export interface Drafts {
  /** The engine as the case states it. */
  caseEngine: Engine | undefined;
  /** The engine as it was answered since: recorded with the next result. */
  newEngine: Engine | undefined;
  /** Offered as the answer when the engine is asked for: known from the readings in the case, or from an earlier answer. */
  guessedEngine: Engine | undefined;
  /** Lines that were typed and not recorded, by the field they were typed in. */
  readonly lines: Map<string, string>;
}
