import type { CliqueTree } from '../tree/cliqueTree.ts';
import type { Factor } from '../factors/factor.ts';
import type { Network } from '../network/network.ts';
import type { SlicedLoops } from '../tree/slicedLoops.ts';
import type { TreeLoops } from '../tree/treeLoops.ts';

/** A network's clique tree, calibrated without evidence: what a workspace is made for and reads. Never written after it is made. */
export interface CalibratedTree {
  readonly network: Network;
  /** Number of states by position. */
  readonly cardinalities: Int32Array;
  /** P(variable | parents) by position. */
  readonly families: readonly Factor[];
  /** See `evidenceReach`. */
  readonly reach: Int32Array;
  /** Variable that is in every clique because answers are kept apart by its states; -1 for none. */
  readonly each: number;
  /** Whether the tree is one small table: see `propagateJoint`. */
  readonly isJoint: boolean;
  readonly tree: CliqueTree;
  readonly loops: TreeLoops;
  /** The loops without evidence. */
  readonly sliced: SlicedLoops;
  /** Where clique c's table, the separator above it, and what it does not share with its parent begin. */
  readonly tableAt: Int32Array;
  readonly separatorAt: Int32Array;
  readonly summaryAt: Int32Array;
  /** Where variable v's marginal begins; the last entry is the length of all. */
  readonly marginAt: Int32Array;
  /** P(clique) and P(separator): all cliques' tables, then all separators'. */
  readonly prior: Float64Array;
  /** 1 / P(separator), 0 where that is zero, at `separatorAt[c] - separatorAt[0]`. */
  readonly inverse: Float64Array;
  readonly priorMarginals: Float64Array;
}
