import { solveComponent } from './solveComponent.ts';
import type { CompiledSweep } from './sweep.ts';
import type { StateEvidence, SweepState } from './sweepState.ts';

/** The evidence of a state, made when first asked for. */
export function evidenceOfState(sweep: CompiledSweep, state: SweepState): StateEvidence {
  if (state.evidence !== null) return state.evidence;
  const logEvidence = state.logBase.slice();
  for (const component of new Set(state.componentOf)) {
    if (component === null || !component.isObserved) continue;
    const fresh = component.solution === null;
    const { joint, logTotal } = solveComponent(component, sweep.cardinalities);
    if (fresh) sweep.cache.entries += 2 * (joint?.length ?? 1024);
    for (let r = 0; r < logEvidence.length; r += 1) logEvidence[r]! += logTotal[component.classOf[r]!]!;
  }
  state.evidence = { logEvidence, someImpossible: logEvidence.some((log) => log === -Infinity) };
  return state.evidence;
}
