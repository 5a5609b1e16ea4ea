import type { Engine } from '@faultodds/core';

/** What is remembered while a case is worked on, beside the case itself: so that nothing is asked or typed twice. */
export interface Desk {
  /** The engine as the case states it. */
  stated: Engine | undefined;
  /** The engine as it was told since: recorded with the next result. */
  told: Engine | undefined;
  /** Offered when the engine is asked for: what the readings on record tell, or what was said before. */
  guess: Engine | undefined;
  /** Lines that were typed and not recorded, by the field they were typed in. */
  readonly typed: Map<string, string>;
}
