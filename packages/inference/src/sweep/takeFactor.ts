import { combineComponents } from './combineComponents.ts';
import type { CompiledSweep } from './sweep.ts';
import type { SweepComponent } from './sweepComponent.ts';
import type { SweepFactor } from './sweepFactor.ts';
import type { SweepState } from './sweepState.ts';

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
