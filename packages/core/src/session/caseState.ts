import type { Context } from '../evidence/facts.ts';
import type { Observation } from '../evidence/observation.ts';
import type { Prices } from '../cost/circumstances.ts';
import type { Engine } from '../reading/engine.ts';

/** The state of a case: the fold of its events. Plain data, safe to keep and compare. */
export interface CaseState {
  readonly id: string;
  readonly title: string;
  readonly context: Context;
  /** Absent until it is stated; `engineOf` then looks at the readings. */
  readonly engine?: Engine;
  /** In the order they were made; retracted ones are gone. */
  readonly observations: readonly Observation[];
  /** In the order they were opened, each after what it requires. */
  readonly openAccess: readonly string[];
  /** Absent: everything is at hand. */
  readonly equipment?: readonly string[];
  /** Absent: the model's own. */
  readonly prices?: Prices;
  readonly notes: readonly string[];
}
