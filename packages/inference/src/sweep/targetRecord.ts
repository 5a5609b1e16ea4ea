import type { SweepFactor } from './sweepFactor.ts';

/** A caller's target, checked, the root taken out. */
export interface TargetRecord extends SweepFactor {
  readonly states: number;
  /** 1 at the positions of its parents. */
  readonly isParent: Uint8Array;
  /** The table with its parents in other orders, by order. */
  readonly arrangements: Map<string, Float64Array>;
  /** Parent -> the target with it summed out; null when that is too large. See `composeTarget`. */
  readonly composed: Map<number, TargetRecord | null>;
}
