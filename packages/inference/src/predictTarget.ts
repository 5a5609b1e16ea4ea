import { refineClasses } from './rootClasses.ts';
import type { CompiledSweep, TargetRecord } from './sweep.ts';
import { distributionOf, type SweepComponent } from './sweepComponent.ts';
import type { SweepState } from './sweepState.ts';
import { addAlong } from './addAlong.ts';
import { nestOf } from './loopNest.ts';

/** P(child | factors so far, root) at [root][state] of a target whose parents all have components in `state`.
 * The parents' components are summed out of the child's table one after the other, those with the fewest root classes first, so that
 * the large table is read only a few times. Kept with the last state whose factor touched one of the parents. */
export function predictTarget(sweep: CompiledSweep, state: SweepState, target: TargetRecord): Float64Array {
  let owner = state;
  while (
    owner.before !== null &&
    !(owner.changed !== null && owner.changed.variables.some((variable) => target.isParent[variable] === 1))
  )
    owner = owner.before;
  const known = owner.answers.get(target);
  if (known !== undefined) return known;
  const answer = contract(sweep, state, target);
  owner.answers.set(target, answer);
  sweep.held.entries += answer.length;
  return answer;
}

function contract(sweep: CompiledSweep, state: SweepState, target: TargetRecord): Float64Array {
  const { cardinalities } = sweep;
  const { states } = target;
  const components = [...new Set(target.variables.map((variable) => state.componentOf[variable]!))];
  components.sort((a, b) => a.firstOf.length - b.firstOf.length);
  const groups = components.map((component) =>
    target.variables.filter((variable) => state.componentOf[variable] === component),
  );
  let table = arranged(target, groups.flat(), cardinalities);
  let rest = target.size;
  let classes: { readonly classOf: Int32Array; readonly firstOf: Int32Array } = target;
  components.forEach((component: SweepComponent, k) => {
    const joint = distributionOf(component, groups[k]!, cardinalities);
    const configurations = joint.length / component.firstOf.length;
    const refined = refineClasses(classes, component);
    const block = rest / configurations;
    const next = new Float64Array(refined.firstOf.length * block);
    refined.firstOf.forEach((r, c) => {
      weighRows(
        next,
        c * block,
        table,
        classes.classOf[r]! * rest,
        joint,
        component.classOf[r]! * configurations,
        configurations,
        block,
      );
    });
    table = next;
    rest = block;
    classes = refined;
  });
  const answer = new Float64Array(classes.classOf.length * states);
  classes.classOf.forEach((c, r) => {
    for (let s = 0; s < states; s += 1) answer[r * states + s] = table[c * states + s]!;
  });
  return answer;
}

/** next[n + j] = sum over i of weights[w + i] * table[t + i * block + j]. */
function weighRows(
  next: Float64Array,
  n: number,
  table: Float64Array,
  t: number,
  weights: Float64Array,
  w: number,
  rows: number,
  block: number,
): void {
  for (let i = 0, from = t; i < rows; i += 1, from += block) {
    const weight = weights[w + i]!;
    if (weight === 0) continue;
    for (let j = 0; j < block; j += 1) next[n + j]! += weight * table[from + j]!;
  }
}

/** The child's table with its parents in another order; the last few orders are kept. */
function arranged(target: TargetRecord, order: readonly number[], cardinalities: Int32Array): Float64Array {
  if (order.every((variable, k) => variable === target.variables[k])) return target.blocks;
  const key = order.join();
  const known = target.arrangements.get(key);
  if (known !== undefined) return known;
  const made = new Float64Array(target.blocks.length);
  const child = cardinalities.length;
  const sizes = [...cardinalities, target.states];
  const nest = nestOf([...order, child], [...target.variables, child], sizes);
  for (let from = 0; from < made.length; from += target.size)
    addAlong(target.blocks, from, made, from, nest.n, nest.b, nest.a, 0, nest.count);
  if (target.arrangements.size >= 8) target.arrangements.clear();
  target.arrangements.set(key, made);
  return made;
}
