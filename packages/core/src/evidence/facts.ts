import type { Observation } from './observation.ts';

/** Intake answers: feature id -> value id. A feature that is not stated changes nothing, and rules out what requires it. */
export type Context = Readonly<Record<string, string>>;

/** All that is known of a case: intake answers and observations, in the order they were made. */
export interface Facts {
  readonly context: Context;
  readonly observations: readonly Observation[];
}
