import { combineComponents } from './combineComponents.ts';
import type { SweepComponent } from './sweepComponent.ts';
import type { SweepFactor } from './sweepFactor.ts';
import type { TargetRecord } from './targetRecord.ts';

/** A sweep after some factors: which component every variable is in, and what was derived here. States form a tree by the order
 * in which factors were taken, so that asking again with one factor more costs only what that factor touches. */
export interface SweepState {
  readonly before: SweepState | null;
  /** The component made by the last factor; null at the start and after a factor over the root alone. */
  readonly changed: SweepComponent | null;
  /** By position; null for variables whose family has not been taken yet (barren so far) and for the root. */
  readonly componentOf: readonly (SweepComponent | null)[];
  /** Per root state: logarithms of factors over the root alone, and of all factors' scales. */
  readonly logBase: Float64Array;
  /** See `evidenceOfState`. */
  evidence: StateEvidence | null;
  /** Target -> P(child | root) at [root][state], for targets that `changed` touches. */
  readonly answers: Map<TargetRecord, Float64Array>;
  readonly after: Map<SweepFactor, SweepState>;
}

/** log P(factors so far | root = r), scales included; whether some is -Infinity. */
export interface StateEvidence {
  readonly logEvidence: Float64Array;
  readonly someImpossible: boolean;
}

/** The state in which every variable whose only parent is the root, or that has none, stands alone. */
export function initialSweepState(
  families: readonly SweepFactor[],
  root: number,
  cardinalities: Int32Array,
): SweepState {
  const componentOf = families.map((family, position) =>
    position !== root && family.variables.length === 1 ? combineComponents([], family, true) : null,
  );
  return {
    before: null,
    changed: null,
    componentOf,
    logBase: new Float64Array(cardinalities[root]!),
    evidence: null,
    answers: new Map(),
    after: new Map(),
  };
}
