import type { Money } from './money.ts';

/** What a step costs now: access that is open already costs nothing more. */
export interface Price {
  readonly total: Money;
  readonly labour: Money;
  /** Parts and consumables, gaskets of the access included. */
  readonly parts: Money;
  /** The part of `total` that opens (and later closes) access. */
  readonly access: Money;
  /** Whole time, opening and closing included. */
  readonly minutes: number;
}
