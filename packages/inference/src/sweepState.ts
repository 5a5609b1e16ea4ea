import { combineComponents } from './combineComponents.ts';
import { solveComponent } from './solveComponent.ts';
import type { CompiledSweep, TargetRecord } from './sweep.ts';
import type { SweepComponent } from './sweepComponent.ts';
import type { SweepFactor } from './sweepFactor.ts';

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
  /** See `evidenceOf`. */
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

/** The evidence of a state, made when first asked for. */
export function evidenceOf(sweep: CompiledSweep, state: SweepState): StateEvidence {
  if (state.evidence !== null) return state.evidence;
  const logEvidence = state.logBase.slice();
  for (const component of new Set(state.componentOf)) {
    if (component === null || !component.isObserved) continue;
    const fresh = component.solution === null;
    const { joint, logTotal } = solveComponent(component, sweep.cardinalities);
    if (fresh) sweep.held.entries += 2 * (joint?.length ?? 1024);
    for (let r = 0; r < logEvidence.length; r += 1) logEvidence[r]! += logTotal[component.classOf[r]!]!;
  }
  state.evidence = { logEvidence, someImpossible: logEvidence.some((log) => log === -Infinity) };
  return state.evidence;
}

/** The state in which every variable whose only parent is the root, or that has none, stands alone. */
export function startState(families: readonly SweepFactor[], root: number, cardinalities: Int32Array): SweepState {
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

/** The state after one factor more, families of its variables taken first; made once, then found again. */
export function takeFactor(sweep: CompiledSweep, state: SweepState, factor: SweepFactor): SweepState {
  const known = state.after.get(factor);
  if (known !== undefined) return known;
  const ready = takeFamilies(sweep, state, factor.variables);
  const next = join(ready, factor, false);
  state.after.set(factor, next);
  return next;
}

/** The state in which these variables, and hence their ancestors, have components. Changes no answer, only what can be asked. */
export function takeFamilies(sweep: CompiledSweep, state: SweepState, variables: readonly number[]): SweepState {
  let ready = state;
  for (const variable of variables) {
    if (ready.componentOf[variable] !== null) continue;
    const family = sweep.families[variable]!;
    const known = ready.after.get(family);
    if (known !== undefined) {
      ready = known;
      continue;
    }
    const parentsReady = takeFamilies(
      sweep,
      ready,
      family.variables.filter((other) => other !== variable),
    );
    const next = join(parentsReady, family, true);
    ready.after.set(family, next);
    ready = next;
  }
  return ready;
}

function join(state: SweepState, factor: SweepFactor, isFamily: boolean): SweepState {
  const joined = [...new Set(factor.variables.map((variable) => state.componentOf[variable]!))].filter(
    (component) => component !== null,
  );
  const componentOf = [...state.componentOf];
  let { logBase } = state;
  let changed: SweepComponent | null = null;
  if (factor.variables.length > 0) {
    changed = combineComponents(joined, factor, isFamily);
    for (const variable of changed.variables) componentOf[variable] = changed;
  }
  if (factor.variables.length === 0 || factor.logScale !== 0) {
    logBase = logBase.map(
      (log, r) =>
        log + factor.logScale + (factor.variables.length === 0 ? Math.log(factor.blocks[factor.classOf[r]!]!) : 0),
    );
  }
  return { before: state, changed, componentOf, logBase, evidence: null, answers: new Map(), after: new Map() };
}
