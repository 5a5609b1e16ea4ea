import { addAlong } from './addAlong.ts';
import { addLoop, nestOf } from './loopNest.ts';
import { eliminateComponent, solveComponent } from './solveComponent.ts';
import type { RootClasses } from './rootClasses.ts';
import type { SweepFactor } from './sweepFactor.ts';

/** Variables that what was observed ties together given the root. Their joint distribution given each class of root states is made when
 * first asked for. */
export interface SweepComponent extends RootClasses {
  readonly variables: readonly number[];
  /** Everything multiplied so far. */
  readonly parts: readonly SweepFactor[];
  /** The components and the factor it was made of. */
  readonly from: readonly SweepComponent[];
  readonly by: SweepFactor;
  /** Whether anything but families was multiplied: if not, all totals are one. */
  readonly isObserved: boolean;
  /** See `solveComponent`. */
  solution: ComponentSolution | null;
  /** Distributions already derived, by their variables. Filled on demand. */
  readonly derived: { readonly variables: readonly number[]; readonly values: Float64Array }[];
}

/** A component multiplied out. */
export interface ComponentSolution {
  /** Proportional to P(variables, likelihoods so far | root class) at [class][configuration], last variable fastest; or, when that would
   * be large, null. */
  readonly joint: Float64Array | null;
  /** log of what a class's joint must be multiplied by, and of its total then; -Infinity for an impossible class. */
  readonly logShift: Float64Array;
  readonly logTotal: Float64Array;
  /** No positive entry of the joint is smaller; 0 when one was lost to underflow. */
  readonly smallest: number;
}

/** P(asked | likelihoods so far, root class) at [class][configuration], last of `asked` fastest; zeros for an impossible class. Kept for
 * the next time. */
export function distributionOf(
  component: SweepComponent,
  asked: readonly number[],
  cardinalities: Int32Array,
): Float64Array {
  const { derived } = component;
  let source: { readonly variables: readonly number[]; readonly values: Float64Array } | null = null;
  for (const known of derived) {
    if (known.variables.length === asked.length && asked.every((variable, k) => known.variables[k] === variable))
      return known.values;
    const covers = asked.every((variable) => known.variables.includes(variable));
    if (covers && (source === null || known.values.length < source.values.length)) source = known;
  }
  const classes = component.firstOf.length;
  const { joint } = source === null ? solveComponent(component, cardinalities) : { joint: null };
  if (joint !== null) source = { variables: component.variables, values: joint };
  const size = asked.reduce((product, variable) => product * cardinalities[variable]!, 1);
  const values = new Float64Array(classes * size);
  if (source !== null) {
    const nest = nestOf(source.variables, asked, cardinalities, 1);
    addLoop(nest, classes, source.values.length / classes, size);
    addAlong(source.values, 0, values, 0, nest.n, nest.a, nest.b, 0, nest.count);
  } else {
    const found = eliminateComponent(component, asked, cardinalities);
    const nest = nestOf(found.variables, asked, cardinalities);
    component.firstOf.forEach((first, c) =>
      addAlong(found.blocks, found.classOf[first]! * size, values, c * size, nest.n, nest.a, nest.b, 0, nest.count),
    );
  }
  normalizeBlocks(values, values.length / classes);
  derived.push({ variables: asked, values });
  return values;
}

function normalizeBlocks(values: Float64Array, size: number): void {
  for (let from = 0; from < values.length; from += size) {
    let sum = 0;
    for (let k = from; k < from + size; k += 1) sum += values[k]!;
    if (sum > 0) for (let k = from; k < from + size; k += 1) values[k]! /= sum;
  }
}
