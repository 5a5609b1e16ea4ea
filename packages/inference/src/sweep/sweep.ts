import type { Network } from '../network/network.ts';
import type { SweepFactor } from './sweepFactor.ts';
import type { SweepState } from './sweepState.ts';
import type { TargetRecord } from './targetRecord.ts';

/** A non-negative table over network variables that multiplies into the joint distribution: how anything observed enters a sweep. */
export interface LikelihoodFactor {
  /** Any network variables, the root allowed, no repeats. */
  readonly variables: readonly string[];
  /** Length = product of the numbers of states, last variable fastest; non-negative, any scale. Must not change after first use. */
  readonly values: Float64Array;
}

/** P(child | parents) of a variable that is not in the network, whose distribution is asked. */
export interface TargetTable {
  /** Key of the answer; unique within one call. */
  readonly id: string;
  /** Any network variables, the root allowed, no repeats. */
  readonly parents: readonly string[];
  /** Number of states of the child. */
  readonly states: number;
  /** Length = product of the parents' numbers of states times `states`, the child's state fastest; rows sum to one. Must not
   * change after first use. */
  readonly table: Float64Array;
}

/** What is asked of a sweep. */
export interface SweepQuestion {
  readonly likelihoods: readonly LikelihoodFactor[];
  readonly targets: readonly TargetTable[];
  /** Network variables whose posteriors given each root state are wanted too. Default none. */
  readonly posteriorsOf?: readonly string[];
}

/** Answers given each state r of the root. Rows of impossible roots (log evidence -Infinity) are uniform: nothing is NaN.
 * All arrays are borrowed and may be shared with later results: read, do not write. */
export interface SweepResult {
  /** log P(likelihoods | root = r), natural, at the scale the likelihoods were given; -Infinity where impossible. */
  readonly logEvidenceGivenRoot: Float64Array;
  /** id -> P(child = s | likelihoods, root = r) at [r * states + s]. */
  readonly targets: ReadonlyMap<string, Float64Array>;
  /** name -> P(variable = s | likelihoods, root = r) at [r * states + s], for `posteriorsOf`. */
  readonly posteriors: ReadonlyMap<string, Float64Array>;
}

declare const madeByCompileSweep: unique symbol;

/** A network made ready for sweeps over one root. Opaque. Made by `compileSweep`. */
export interface CompiledSweep {
  /** Nobody else makes one. */
  readonly [madeByCompileSweep]: true;
  readonly network: Network;
  /** Position of the root. */
  readonly root: number;
  /** @internal */
  readonly cardinalities: Int32Array;
  /** P(variable | parents) by position, the root taken out. @internal */
  readonly families: readonly SweepFactor[];
  /** Checked factors and targets by the identity of the caller's objects. @internal */
  readonly likelihoods: WeakMap<LikelihoodFactor, SweepFactor>;
  /** @internal */
  readonly targets: WeakMap<TargetTable, TargetRecord>;
  /** Where every sweep starts; what was derived hangs from it. @internal */
  readonly start: SweepState;
  /** Count of the numbers remembered in sweep states; beyond `limit` they are dropped and derived anew when needed. @internal */
  readonly cache: { entries: number; readonly limit: number };
}
