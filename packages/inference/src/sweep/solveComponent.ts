import { addAlong } from '../loops/addAlong.ts';
import type { ClassFactor } from './classFactor.ts';
import { eliminateClasses } from './eliminateClasses.ts';
import { eliminateInLogs } from '../factors/eliminateInLogs.ts';
import { nestOf } from '../loops/loopNest.ts';
import { multiplyAlong } from '../loops/multiplyAlong.ts';
import type { ComponentSolution, SweepComponent } from './sweepComponent.ts';
import type { SweepFactor } from './sweepFactor.ts';

/** Joints of more entries than this, all classes together, are not multiplied out: what is asked of them is got by elimination. */
const largestJoint = 1 << 15;

/** Multiplies a component out, from the components it was made of, or, when its joint would be large, gets only its totals. Done once. */
export function solveComponent(component: SweepComponent, cardinalities: Int32Array): ComponentSolution {
  if (component.solution !== null) return component.solution;
  const { variables, firstOf, parts, from, by } = component;
  const size = variables.reduce((product, variable) => product * cardinalities[variable]!, 1);
  if (size * firstOf.length > largestJoint) {
    const total = eliminateComponent(component, [], cardinalities);
    const logs = Float64Array.from(
      firstOf,
      (first) => Math.log(total.blocks[total.classOf[first]!]!) + (total.logs?.[total.classOf[first]!] ?? 0),
    );
    return (component.solution = { joint: null, logShift: logs, logTotal: logs, smallest: 0 });
  }
  const joint = new Float64Array(firstOf.length * size);
  const logShift = new Float64Array(firstOf.length);
  const logTotal = new Float64Array(firstOf.length);
  const solved = from.map((other) => ({
    ...solveComponent(other, cardinalities),
    classOf: other.classOf,
    classes: other.firstOf.length,
  }));
  let smallest = solved.reduce((product, other) => product * other.smallest, by.smallest);
  if (smallest < 1e-250) smallest = multiplyInLogs(joint, logShift, parts, variables, firstOf, size, cardinalities);
  else multiplyJoints(joint, logShift, solved, by, variables, firstOf, size, cardinalities);
  for (let c = 0; c < firstOf.length; c += 1) {
    let sum = 0;
    const end = (c + 1) * size;
    for (let k = c * size; k < end; k += 1) sum += joint[k]!;
    logTotal[c] = logShift[c]! + Math.log(sum);
    // scaled only when needed: the scale of a class is of no account
    if (sum > 1e-60 || sum === 0) continue;
    logShift[c]! += Math.log(sum);
    for (let k = c * size; k < end; k += 1) joint[k]! /= sum;
  }
  return (component.solution = { joint, logShift, logTotal, smallest });
}

/** The component's product summed down to `keep`, in some order. */
export function eliminateComponent(
  component: SweepComponent,
  keep: readonly number[],
  cardinalities: Int32Array,
): ClassFactor {
  const { parts, classOf } = component;
  if (parts.reduce((product, part) => product * part.smallest, 1) < 1e-250)
    return eliminatePartsInLogs(component, keep, cardinalities);
  return eliminateClasses(factorsOf(component, cardinalities), keep, classOf.length, cardinalities);
}

/** The joints of the small components it was made of, and what joined them: their product is the component's. */
export function factorsOf(component: SweepComponent, cardinalities: Int32Array): ClassFactor[] {
  const { variables, classOf, firstOf, from, by } = component;
  const size = variables.reduce((product, variable) => product * cardinalities[variable]!, 1);
  if (size * firstOf.length <= largestJoint) {
    const { joint, logShift } = solveComponent(component, cardinalities);
    return [{ variables, classOf, firstOf, blocks: joint!, size, logs: logShift }];
  }
  return [...from.flatMap((other) => factorsOf(other, cardinalities)), { ...by, logs: null }];
}

/** Class by class in logarithms: for parts that together leave the range of doubles. */
function eliminatePartsInLogs(
  { parts, classOf, firstOf }: SweepComponent,
  keep: readonly number[],
  cardinalities: Int32Array,
): ClassFactor {
  const size = keep.reduce((product, variable) => product * cardinalities[variable]!, 1);
  const blocks = new Float64Array(size * firstOf.length);
  const logs = Float64Array.from(firstOf, (first, c) => {
    const factors = parts.map((part) => {
      const at = part.classOf[first]! * part.size;
      return { variables: part.variables, values: part.blocks.subarray(at, at + part.size) };
    });
    const values = eliminateInLogs(factors, keep, cardinalities);
    const top = values.reduce((most, log) => Math.max(most, log), -Infinity);
    values.forEach((log, k) => (blocks[c * size + k] = top === -Infinity ? 0 : Math.exp(log - top)));
    return top === -Infinity ? 0 : top;
  });
  return { variables: keep, classOf, firstOf, blocks, size, logs };
}

interface Solved extends ComponentSolution {
  readonly classOf: Int32Array;
  readonly classes: number;
}

function multiplyJoints(
  joint: Float64Array,
  logShift: Float64Array,
  components: readonly Solved[],
  factor: SweepFactor,
  variables: readonly number[],
  firstOf: Int32Array,
  size: number,
  cardinalities: Int32Array,
): void {
  const nest = nestOf(variables, factor.variables, cardinalities);
  const [only] = components;
  const single = components.length === 1 && sizeOf(only!) === size;
  const fresh = components.reduce((rest, component) => rest / sizeOf(component), size);
  const ones = new Float64Array(fresh).fill(1);
  firstOf.forEach((first, c) => {
    const at = factor.classOf[first]! * factor.size;
    for (const component of components) logShift[c]! += component.logShift[component.classOf[first]!]!;
    if (single) {
      const from = only!.classOf[first]! * size;
      multiplyAlong(
        joint,
        c * size,
        only!.joint as Float64Array,
        from,
        factor.blocks,
        at,
        nest.n,
        nest.a,
        nest.b,
        0,
        nest.count,
      );
      return;
    }
    // the outer product grows at the end of the block, from behind so that nothing is overwritten before it is read
    let length = 1;
    joint[c * size] = 1;
    for (const component of components) {
      const block = sizeOf(component);
      spread(joint, c * size, length, component.joint as Float64Array, component.classOf[first]! * block, block);
      length *= block;
    }
    if (fresh > 1) spread(joint, c * size, length, ones, 0, fresh);
    multiplyAlong(joint, c * size, joint, c * size, factor.blocks, at, nest.n, nest.a, nest.b, 0, nest.count);
  });
}

function sizeOf(component: Solved): number {
  return (component.joint as Float64Array).length / component.classes;
}

/** table[t + i * block + j] = table[t + i] * by[o + j], in place. */
function spread(table: Float64Array, t: number, length: number, by: Float64Array, o: number, block: number): void {
  for (let i = length - 1; i >= 0; i -= 1) {
    const value = table[t + i]!;
    for (let j = 0, to = t + i * block; j < block; j += 1, to += 1) table[to] = value * by[o + j]!;
  }
}

/** The product of all parts by sums of logarithms, scaled per class so that its largest entry is one: nothing that matters is lost,
 * however many small factors meet. Returns the smallest positive entry; 0 when a positive entry still came out as zero. */
function multiplyInLogs(
  joint: Float64Array,
  logShift: Float64Array,
  parts: readonly SweepFactor[],
  variables: readonly number[],
  firstOf: Int32Array,
  size: number,
  cardinalities: Int32Array,
): number {
  for (const part of parts) {
    const nest = nestOf(variables, part.variables, cardinalities);
    const logs = part.blocks.map(Math.log);
    firstOf.forEach((first, c) => {
      addAlong(logs, part.classOf[first]! * part.size, joint, c * size, nest.n, nest.b, nest.a, 0, nest.count);
    });
  }
  let smallest = Infinity;
  for (let c = 0; c < firstOf.length; c += 1) {
    let top = -Infinity;
    for (let k = c * size; k < (c + 1) * size; k += 1) if (joint[k]! > top) top = joint[k]!;
    logShift[c] = top === -Infinity ? 0 : top;
    for (let k = c * size; k < (c + 1) * size; k += 1) {
      const log = joint[k]!;
      joint[k] = log === -Infinity ? 0 : Math.exp(log - top);
      if (log > -Infinity && joint[k]! < smallest) smallest = joint[k]!;
    }
  }
  return smallest;
}
