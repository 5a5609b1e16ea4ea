import type { CliqueTree } from '../tree/cliqueTree.ts';
import type { Factor } from '../factors/factor.ts';
import type { Network } from '../network/network.ts';
import type { SlicedLoops } from '../tree/slicedLoops.ts';
import type { TreeLoops } from '../tree/treeLoops.ts';

/** A network's clique tree, calibrated without evidence: what a workspace is made for and reads. Never written after it is made. */
export interface CalibratedTree {
  readonly network: Network;
  /** Number of states by position. @internal */
  readonly cardinalities: Int32Array;
  /** P(variable | parents) by position. @internal */
  readonly families: readonly Factor[];
  /** See `evidenceReach`. @internal */
  readonly reach: Int32Array;
  /** Variable that is in every clique because answers are kept apart by its states; -1 for none. @internal */
  readonly each: number;
  /** Whether the tree is one small table: see `propagateJoint`. @internal */
  readonly isJoint: boolean;
  /** @internal */
  readonly tree: CliqueTree;
  /** @internal */
  readonly loops: TreeLoops;
  /** The loops without evidence. @internal */
  readonly sliced: SlicedLoops;
  /** Where clique c's table, the separator above it, and what it does not share with its parent begin. @internal */
  readonly tableAt: Int32Array;
  /** @internal */
  readonly separatorAt: Int32Array;
  /** @internal */
  readonly summaryAt: Int32Array;
  /** Where variable v's marginal begins; the last entry is the length of all. @internal */
  readonly marginAt: Int32Array;
  /** P(clique) and P(separator): all cliques' tables, then all separators'. @internal */
  readonly prior: Float64Array;
  /** 1 / P(separator), 0 where that is zero, at `separatorAt[c] - separatorAt[0]`. @internal */
  readonly inverse: Float64Array;
  /** @internal */
  readonly priorMarginals: Float64Array;
}
