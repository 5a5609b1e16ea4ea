import type { CalibratedTree } from './calibratedTree.ts';
import { createSlicedLoops, type SlicedLoops } from '../tree/slicedLoops.ts';

declare const madeByCreatePropagation: unique symbol;

/** A workspace for asking a compiled network: findings, tables and loops in typed arrays, all allocated when it is made.
 * Between questions it keeps what is still valid. Mutable: one at a time per thread. Made by `createPropagation`. */
export interface Propagation {
  /** Nobody else makes one. */
  readonly [madeByCreatePropagation]: true;
  /** @internal */
  readonly compiled: CalibratedTree;
  /** State seen, by variable; -1 when there is no hard finding. @internal */
  readonly states: Int32Array;
  /** 1 when the variable has a likelihood; its numbers are in `weights`, at the position of its marginal in `marginals`. @internal */
  readonly soft: Uint8Array;
  /** @internal */
  readonly weights: Float64Array;
  /** log of what a likelihood was divided by. @internal */
  readonly softLogs: Float64Array;
  /** The findings that the tables are about: the state; -1 for none, -2 for the likelihood, -3 for one that has changed since. @internal */
  readonly taken: Int32Array;
  /** Number of findings whose home is in the subtree of each clique. @internal */
  readonly findingsBelow: Int32Array;
  /** What of a clique is out of date: 2, what is collected; 1, the belief; 3, both. @internal */
  readonly stale: Uint8Array;
  /** Tables collected from below, and separators' messages upwards: laid out like the prior. @internal */
  readonly collected: Float64Array;
  /** Tables, and separators, with all evidence. The root has no other table than what was collected: its part of `beliefs` is the sum for
   * the separator of `now.summed`. @internal */
  readonly beliefs: Float64Array;
  /** Messages upwards divided by the prior of their separator, at `separatorAt[c] - separatorAt[0]`. @internal */
  readonly ratios: Float64Array;
  /** The message downwards at hand, divided by what came up. @internal */
  readonly downRatio: Float64Array;
  /** What a clique does not share with its parent, at `summaryAt`. @internal */
  readonly summaries: Float64Array;
  /** P(state | evidence), variable by variable at `compiled.marginAt`. @internal */
  readonly marginals: Float64Array;
  /** Smallest positive number of each message upwards, whose largest is about one; 0 when a positive number was lost. @internal */
  readonly least: Float64Array;
  /** One number: natural logarithm of P(evidence), as of the last propagation. @internal */
  readonly logEvidence: Float64Array;
  /** Logarithms taken out of the message upwards. @internal */
  readonly logs: Float64Array;
  /** 1 when the message upwards is one number, and is in `logs`. @internal */
  readonly scalar: Uint8Array;
  /** Where a clique's collected table is (0 the prior, 1 `collected`), and the separator's belief (2 `beliefs`). When the latter is in
   * `beliefs`, so is the clique's own; else what was collected is its belief. @internal */
  readonly collectedFrom: Uint8Array;
  /** @internal */
  readonly separatorFrom: Uint8Array;
  /** 1 for variables that are unobserved and that the findings can change. @internal */
  readonly active: Uint8Array;
  /** How many of them are shared with the parent of each clique; and how many have their marginal read from that clique. @internal */
  readonly activeShared: Int32Array;
  /** @internal */
  readonly activeHere: Int32Array;
  /** The active ones as a bit set, observed ones included. @internal */
  readonly reached: Int32Array;
  /** @internal */
  readonly sliced: SlicedLoops;
  /** Round in which a nest was last sliced, and in which the finding on some variable of a clique last changed. @internal */
  readonly slicedIn: Float64Array;
  /** @internal */
  readonly seenIn: Float64Array;
  /** Round in which a clique's belief was last brought up to date, and in which it last changed. @internal */
  readonly madeIn: Float64Array;
  /** @internal */
  readonly changedIn: Float64Array;
  /** Round in which a variable's marginal was last read. @internal */
  readonly readIn: Float64Array;
  /** Positions of the entries of the joint table that agree with the findings (see `propagateJoint`). @internal */
  readonly matchingEntries: Int32Array;
  /** `round` changes with every change of evidence, `pattern` when other variables are observed than before; `collectedIn` and `activeIn`
   * say in which of them that was last done; `summed`: the child of the root whose separator was summed when collecting; `doubtful`:
   * numbers became so small when collecting that some may have been lost. @internal */
  readonly now: {
    doubtful: boolean;
    findings: number;
    round: number;
    collectedIn: number;
    pattern: number;
    activeIn: number;
    summed: number;
  };
}

/** Makes a workspace. Costs memory for all tables twice, touched only as far as evidence needs it.
 * @example [...createPropagation(compileNetwork(network)).states] // [-1, -1], no finding yet */
export function createPropagation(compiled: CalibratedTree): Propagation {
  const { tree, loops, prior, separatorAt, summaryAt, marginAt, cardinalities } = compiled;
  const n = cardinalities.length;
  const parts: Omit<Propagation, symbol> = {
    compiled,
    states: new Int32Array(n).fill(-1),
    soft: new Uint8Array(n),
    weights: new Float64Array(marginAt[n]!),
    softLogs: new Float64Array(n),
    taken: new Int32Array(n).fill(-1),
    findingsBelow: new Int32Array(tree.count),
    stale: new Uint8Array(tree.count).fill(3),
    collected: new Float64Array(prior.length),
    beliefs: new Float64Array(prior.length),
    ratios: new Float64Array(separatorAt[tree.count]! - separatorAt[0]!),
    downRatio: new Float64Array(separatorAt[tree.count]! - separatorAt[0]!),
    summaries: new Float64Array(summaryAt[tree.count]!),
    marginals: new Float64Array(marginAt[n]!),
    least: new Float64Array(tree.count),
    logEvidence: new Float64Array(1),
    logs: new Float64Array(tree.count),
    scalar: new Uint8Array(tree.count),
    collectedFrom: new Uint8Array(tree.count),
    separatorFrom: new Uint8Array(tree.count),
    active: new Uint8Array(n),
    activeShared: new Int32Array(tree.count),
    activeHere: new Int32Array(tree.count),
    reached: new Int32Array((n + 31) >>> 5),
    sliced: createSlicedLoops(loops),
    slicedIn: new Float64Array(loops.owner.length).fill(-1),
    seenIn: new Float64Array(tree.count),
    madeIn: new Float64Array(tree.count),
    changedIn: new Float64Array(tree.count),
    readIn: new Float64Array(n),
    matchingEntries: new Int32Array(compiled.isJoint ? prior.length : 0),
    now: { doubtful: false, findings: 0, round: 1, collectedIn: 0, pattern: 1, activeIn: 0, summed: -1 },
  };
  return parts as Propagation;
}
