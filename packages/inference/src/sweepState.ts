import { combineComponents } from './combineComponents.ts';
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
  /** log P(factors so far | root = r), scales included. */
  readonly logEvidence: Float64Array;
  readonly someImpossible: boolean;
  /** Target -> P(child | root) at [root][state], for targets that `changed` touches. */
  readonly answers: Map<TargetRecord, Float64Array>;
  readonly after: Map<SweepFactor, SweepState>;
}

/** The state in which every variable whose only parent is the root, or that has none, stands alone. */
export function startState(families: readonly SweepFactor[], root: number, cardinalities: Int32Array): SweepState {
  const componentOf = families.map((family, position) =>
    position !== root && family.variables.length === 1 ? combineComponents([], family, cardinalities) : null,
  );
  return {
    before: null,
    changed: null,
    componentOf,
    logEvidence: new Float64Array(cardinalities[root]!),
    someImpossible: false,
    answers: new Map(),
    after: new Map(),
  };
}

/** The state after one factor more, families of its variables taken first; made once, then found again. */
export function takeFactor(sweep: CompiledSweep, state: SweepState, factor: SweepFactor): SweepState {
  const known = state.after.get(factor);
  if (known !== undefined) return known;
  const ready = takeFamilies(sweep, state, factor.variables);
  const next = join(sweep, ready, factor);
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
    const next = join(sweep, parentsReady, family);
    ready.after.set(family, next);
    ready = next;
  }
  return ready;
}

function join(sweep: CompiledSweep, state: SweepState, factor: SweepFactor): SweepState {
  const joined = [...new Set(factor.variables.map((variable) => state.componentOf[variable]!))].filter(
    (component) => component !== null,
  );
  const logEvidence = state.logEvidence.slice();
  const componentOf = [...state.componentOf];
  let changed: SweepComponent | null = null;
  if (factor.variables.length > 0) {
    const made = combineComponents(joined, factor, sweep.cardinalities);
    changed = made;
    for (const variable of made.variables) componentOf[variable] = made;
    sweep.held.entries += made.joint?.length ?? 0;
    logEvidence.forEach((_, r) => {
      let log = made.logTotal[made.classOf[r]!]!;
      for (const component of joined) {
        const earlier = component.logTotal[component.classOf[r]!]!;
        log = earlier === -Infinity ? -Infinity : log - earlier;
      }
      logEvidence[r]! += log + factor.logScale;
    });
  } else {
    logEvidence.forEach((_, r) => (logEvidence[r]! += Math.log(factor.blocks[factor.classOf[r]!]!) + factor.logScale));
  }
  sweep.held.entries += logEvidence.length;
  const someImpossible = logEvidence.some((log) => log === -Infinity);
  return { before: state, changed, componentOf, logEvidence, someImpossible, answers: new Map(), after: new Map() };
}
