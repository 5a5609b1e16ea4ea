import { addLogsAlong } from './addLogsAlong.ts';
import { nestOf } from './loopNest.ts';
import { multiplyAlong } from './multiplyAlong.ts';
import { oneClass, refineClasses, type RootClasses } from './rootClasses.ts';
import { eliminateComponent, type SweepComponent } from './sweepComponent.ts';
import type { SweepFactor } from './sweepFactor.ts';

/** Joints of more entries than this, all classes together, are not multiplied out but eliminated when asked. */
const largestJoint = 1 << 18;

/** Joins components by a factor over some of their variables (all of the factor's variables that are not new are among them).
 * A factor may bring new variables: those of a family. */
export function combineComponents(
  components: readonly SweepComponent[],
  factor: SweepFactor,
  cardinalities: Int32Array,
): SweepComponent {
  const variables = components.flatMap((component) => component.variables);
  for (const variable of factor.variables) if (!variables.includes(variable)) variables.push(variable);
  let classes: RootClasses = oneClass(factor.classOf.length);
  for (const component of components) classes = refineClasses(classes, component);
  classes = refineClasses(classes, factor);
  const { classOf, firstOf } = classes;
  const count = firstOf.length;
  const parts = [...components.flatMap((component) => component.parts), factor];
  const size = variables.reduce((product, variable) => product * cardinalities[variable]!, 1);
  const logTotal = new Float64Array(count);
  if (size * count > largestJoint) {
    const { values, logScale } = eliminateComponent(parts, firstOf, [], cardinalities);
    logTotal.forEach((_, c) => (logTotal[c] = logScale[c]! + Math.log(values[c]!)));
    return { variables, classOf, firstOf, joint: null, logTotal, parts, smallest: 0, derived: [] };
  }
  const joint = new Float64Array(count * size);
  const safe = components.reduce((product, component) => product * component.smallest, factor.smallest) > 1e-290;
  let smallest = Infinity;
  if (safe) {
    const pieces = [
      ...components.map((component) => ({ table: component, values: component.joint! })),
      { table: factor, values: factor.blocks },
    ];
    joint.fill(1);
    for (const { table, values } of pieces) {
      const nest = nestOf(variables, table.variables, cardinalities);
      const step = values.length / table.firstOf.length;
      firstOf.forEach((first, c) => {
        multiplyAlong(
          joint,
          c * size,
          joint,
          c * size,
          values,
          table.classOf[first]! * step,
          nest.n,
          nest.a,
          nest.b,
          0,
          nest.count,
        );
      });
    }
    components.forEach((component) =>
      logTotal.forEach((_, c) => (logTotal[c]! += component.logTotal[component.classOf[firstOf[c]!]!]!)),
    );
  } else if (!multiplyInLogs(joint, logTotal, parts, variables, firstOf, size, cardinalities)) smallest = 0;
  for (let c = 0; c < count; c += 1) {
    let sum = 0;
    const end = (c + 1) * size;
    for (let k = c * size; k < end; k += 1) sum += joint[k]!;
    logTotal[c]! += Math.log(sum);
    if (sum === 0) continue;
    for (let k = c * size; k < end; k += 1) {
      const value = joint[k]! / sum;
      joint[k] = value;
      if (value > 0 && value < smallest) smallest = value;
    }
  }
  return { variables, classOf, firstOf, joint, logTotal, parts, smallest, derived: [] };
}

/** The product of all parts by sums of logarithms, scaled per class so that its largest entry is one: nothing that matters is lost,
 * however many small factors meet. Returns false when some positive entry still came out as zero. */
function multiplyInLogs(
  joint: Float64Array,
  logTotal: Float64Array,
  parts: readonly SweepFactor[],
  variables: readonly number[],
  firstOf: Int32Array,
  size: number,
  cardinalities: Int32Array,
): boolean {
  for (const part of parts) {
    const nest = nestOf(variables, part.variables, cardinalities);
    firstOf.forEach((first, c) =>
      addLogsAlong(
        joint,
        c * size,
        part.blocks,
        part.classOf[first]! * part.size,
        nest.n,
        nest.a,
        nest.b,
        0,
        nest.count,
      ),
    );
  }
  let whole = true;
  for (let c = 0; c < firstOf.length; c += 1) {
    let top = -Infinity;
    for (let k = c * size; k < (c + 1) * size; k += 1) if (joint[k]! > top) top = joint[k]!;
    logTotal[c] = top === -Infinity ? 0 : top;
    for (let k = c * size; k < (c + 1) * size; k += 1) {
      const log = joint[k]!;
      joint[k] = log === -Infinity ? 0 : Math.exp(log - top);
      if (joint[k] === 0 && log > -Infinity) whole = false;
    }
  }
  return whole;
}
