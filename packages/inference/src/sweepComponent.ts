import { addAlong } from './addAlong.ts';
import { eliminateVariables } from './eliminateVariables.ts';
import type { Factor } from './factor.ts';
import { addLoop, nestOf } from './loopNest.ts';
import type { RootClasses } from './rootClasses.ts';
import type { SweepFactor } from './sweepFactor.ts';

/** Variables that what was observed ties together given the root, and their joint distribution given each class of root states. */
export interface SweepComponent extends RootClasses {
  readonly variables: readonly number[];
  /** P(variables | likelihoods so far, root class) at [class][configuration], last variable fastest; zeros for a class that is
   * impossible. null when it would be too large: then it is `parts`, unmultiplied. */
  readonly joint: Float64Array | null;
  /** log of the joint's total before it was normalised, per class. */
  readonly logTotal: Float64Array;
  /** Everything multiplied so far. */
  readonly parts: readonly SweepFactor[];
  /** Smallest positive entry of the joint; 0 when one was lost to underflow. */
  readonly smallest: number;
  /** Distributions already derived, by their variables. Filled on demand. */
  readonly derived: { readonly variables: readonly number[]; readonly values: Float64Array }[];
}

/** P(asked | likelihoods so far, root class) at [class][configuration], last of `asked` fastest. Kept for the next time. */
export function distributionOf(
  component: SweepComponent,
  asked: readonly number[],
  cardinalities: Int32Array,
): Float64Array {
  let source: { readonly variables: readonly number[]; readonly values: Float64Array } | null = null;
  for (const known of component.derived) {
    if (known.variables.length === asked.length && asked.every((variable, k) => known.variables[k] === variable))
      return known.values;
    if (
      asked.every((variable) => known.variables.includes(variable)) &&
      (source === null || known.values.length < source.values.length)
    )
      source = known;
  }
  if (source === null && component.joint !== null) source = { variables: component.variables, values: component.joint };
  const values =
    source === null
      ? eliminated(component, asked, cardinalities)
      : summed(source, asked, component.firstOf.length, cardinalities);
  component.derived.push({ variables: asked, values });
  return values;
}

function summed(
  source: { readonly variables: readonly number[]; readonly values: Float64Array },
  asked: readonly number[],
  classes: number,
  cardinalities: Int32Array,
): Float64Array {
  const size = asked.reduce((product, variable) => product * cardinalities[variable]!, 1);
  const values = new Float64Array(classes * size);
  const nest = nestOf(source.variables, asked, cardinalities, 1);
  addLoop(nest, classes, source.values.length / classes, size);
  addAlong(source.values, 0, values, 0, nest.n, nest.a, nest.b, 0, nest.count);
  return values;
}

function eliminated(component: SweepComponent, asked: readonly number[], cardinalities: Int32Array): Float64Array {
  const classes = component.firstOf.length;
  const { values } = eliminateComponent(component.parts, component.firstOf, asked, cardinalities);
  const size = values.length / classes;
  const result = new Float64Array(values.length);
  for (let c = 0; c < classes; c += 1) {
    let sum = 0;
    for (let k = 0; k < size; k += 1) sum += values[k * classes + c]!;
    for (let k = 0; k < size && sum > 0; k += 1) result[c * size + k] = values[k * classes + c]! / sum;
  }
  return result;
}

/** Bucket elimination of a product of parts down to `asked`, all root classes in one batch (class fastest). */
export function eliminateComponent(
  parts: readonly SweepFactor[],
  firstOf: Int32Array,
  asked: readonly number[],
  cardinalities: Int32Array,
): { values: Float64Array; logScale: Float64Array } {
  const classes = firstOf.length;
  const batch = cardinalities.length;
  const factors: Factor[] = parts.map((part) => {
    if (part.firstOf.length === 1) return { variables: part.variables, values: part.blocks };
    const values = new Float64Array(part.size * classes);
    for (let c = 0; c < classes; c += 1) {
      const from = part.classOf[firstOf[c]!]! * part.size;
      for (let k = 0; k < part.size; k += 1) values[k * classes + c] = part.blocks[from + k]!;
    }
    return { variables: [...part.variables, batch], values };
  });
  return eliminateVariables(factors, asked, batch, Int32Array.of(...cardinalities, classes));
}
