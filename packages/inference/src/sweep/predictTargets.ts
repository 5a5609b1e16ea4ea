import { addAlong } from '../loops/addAlong.ts';
import { composeTarget } from './composeTarget.ts';
import { contractRows } from '../loops/contractRows.ts';
import { distributionOf } from './distributionOf.ts';
import { eliminateClasses } from './eliminateClasses.ts';
import { nestOf } from '../loops/loopNest.ts';
import { refineClasses, type RootClasses } from './rootClasses.ts';
import { createScratch, release, takeZeros } from '../loops/scratch.ts';
import { shareDistributions } from './shareDistributions.ts';
import { factorsOf, solveComponent } from './solveComponent.ts';
import type { CompiledSweep } from './sweep.ts';
import type { SweepComponent } from './sweepComponent.ts';
import type { SweepState } from './sweepState.ts';
import { takeFamilies } from './takeFactor.ts';
import type { TargetRecord } from './targetRecord.ts';

/** Distributions of more numbers than this, all classes together, are not made by elimination for one target. */
const widestDistribution = 1 << 15;

const scratch = createScratch();

interface Pending {
  readonly target: TargetRecord;
  /** The last state whose factor touched one of the parents: the answer is kept there. */
  readonly owner: SweepState;
  readonly components: readonly SweepComponent[];
  /** The target's parents in each of them. */
  readonly groups: readonly (readonly number[])[];
}

/** P(child | factors so far, root) at [root][state] of every target, in order.
 * A target's parents' components are summed out of its table one after the other, in an order in which the large table is read only a few times. */
export function predictTargets(
  sweep: CompiledSweep,
  state: SweepState,
  targets: readonly TargetRecord[],
): Float64Array[] {
  const pending: Pending[] = [];
  const wanted = new Map<SweepComponent, (readonly number[])[]>();
  const owners = targets.map((asked) => {
    const composed = composeTarget(sweep, asked, (variable) => state.componentOf[variable] !== null);
    const target = composed ?? asked;
    const ready = takeFamilies(sweep, state, target.variables);
    let owner = ready;
    while (owner.before !== null && !touches(owner, target)) owner = owner.before;
    if (owner.answers.has(target)) return { owner, target };
    const components = [...new Set(target.variables.map((variable) => ready.componentOf[variable]!))];
    sortForContraction(sweep, target, components);
    const groups = components.map((component) =>
      target.variables.filter((variable) => ready.componentOf[variable] === component),
    );
    components.forEach((component, k) => {
      if (isWide(component, groups[k]!, sweep.cardinalities)) return;
      const list = wanted.get(component);
      if (list === undefined) wanted.set(component, [groups[k]!]);
      else list.push(groups[k]!);
    });
    pending.push({ target, owner, components, groups });
    return { owner, target };
  });
  for (const [component, list] of wanted) shareDistributions(component, list, sweep.cardinalities);
  for (const one of pending) {
    const answer = contract(sweep, one);
    one.owner.answers.set(one.target, answer);
    sweep.cache.entries += answer.length;
  }
  return owners.map(({ owner, target }) => owner.answers.get(target)!);
}

function touches(state: SweepState, target: TargetRecord): boolean {
  if (state.changed === null) return false;
  for (const variable of state.changed.variables) if (target.isParent[variable] === 1) return true;
  return false;
}

/** Puts first what leaves little to do: few root classes, many configurations. A step costs the classes so far times the table left; what
 * it leaves is taken to cost three times as many classes. */
function sortForContraction(sweep: CompiledSweep, target: TargetRecord, components: SweepComponent[]): void {
  const roots = sweep.cardinalities[sweep.root]!;
  let classes = target.firstOf.length;
  const configurations = (component: SweepComponent): number =>
    component.variables.reduce(
      (size, variable) => (target.isParent[variable] === 1 ? size * sweep.cardinalities[variable]! : size),
      1,
    );
  for (let k = 0; k + 1 < components.length; k += 1) {
    let best = k;
    let least = Infinity;
    for (let j = k; j < components.length; j += 1) {
      const after = Math.min(roots, classes * components[j]!.firstOf.length);
      const cost = after * (1 + 3 / configurations(components[j]!));
      if (cost < least) [best, least] = [j, cost];
    }
    [components[k], components[best]] = [components[best]!, components[k]!];
    classes = Math.min(roots, classes * components[k]!.firstOf.length);
  }
}

function contract(sweep: CompiledSweep, { target, components, groups }: Pending): Float64Array {
  const { cardinalities } = sweep;
  const { states } = target;
  if (components.some((component, k) => isWide(component, groups[k]!, cardinalities)))
    return eliminateToChild(sweep, target, components);
  release(scratch);
  let table = arranged(target, groups.flat(), cardinalities);
  let rest = target.size;
  let classes: RootClasses = target;
  components.forEach((component, k) => {
    const before = component.derived.length;
    const joint = distributionOf(component, groups[k]!, cardinalities);
    if (component.derived.length > before) sweep.cache.entries += joint.length;
    const configurations = joint.length / component.firstOf.length;
    const refined = refineClasses(classes, component);
    const block = rest / configurations;
    const next = takeZeros(scratch, refined.firstOf.length * block);
    refined.firstOf.forEach((r, c) => {
      const [w, t] = [component.classOf[r]! * configurations, classes.classOf[r]! * rest];
      contractRows(next, c * block, joint, w, table, t, block, 1, 0, 1, configurations, 1, block);
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

/** Whether a distribution over part of a component would be a large table that has to be made by elimination. */
function isWide(component: SweepComponent, group: readonly number[], cardinalities: Int32Array): boolean {
  const size = group.reduce((product, variable) => product * cardinalities[variable]!, component.firstOf.length);
  return size > widestDistribution && solveComponent(component, cardinalities).joint === null;
}

/** The predictive by elimination of everything but the child, its table one factor among the others: the parents' joint distribution is
 * never made. */
function eliminateToChild(
  sweep: CompiledSweep,
  target: TargetRecord,
  components: readonly SweepComponent[],
): Float64Array {
  const roots = sweep.cardinalities[sweep.root]!;
  const { states, classOf, firstOf, blocks, size } = target;
  const child = sweep.cardinalities.length;
  const own = { variables: [...target.variables, child], classOf, firstOf, blocks, size, logs: null };
  const factors = [...components.flatMap((component) => factorsOf(component, sweep.cardinalities)), own];
  const found = eliminateClasses(factors, [child], roots, [...sweep.cardinalities, states]);
  const answer = new Float64Array(roots * states);
  for (let r = 0; r < roots; r += 1) {
    const from = found.classOf[r]! * states;
    let sum = 0;
    for (let s = 0; s < states; s += 1) sum += found.blocks[from + s]!;
    for (let s = 0; s < states && sum > 0; s += 1) answer[r * states + s] = found.blocks[from + s]! / sum;
  }
  return answer;
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
