import type { NeedlessOpenings } from './needlessOpenings.ts';

/** What repairs do and cost. */
export interface RepairFacts {
  /** repair -> the causes it cures and how surely. */
  readonly cures: readonly (readonly { readonly cause: number; readonly success: number }[])[];
  /** Repairs that may be tried, by index; the referral is not one of them. */
  readonly candidates: readonly number[];
  /** Cost of a repair and its check with this much access open (access bits). */
  readonly costFrom: (repair: number, open: number) => number;
  /** Access a repair needs, as bits, prerequisites included. */
  readonly access: readonly number[];
  readonly needless: NeedlessOpenings;
  /** cause -> fee of the referral and then the right repair from a closed engine. */
  readonly referralCost: Float64Array;
}
