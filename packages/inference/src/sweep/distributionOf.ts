import { addAlong } from '../loops/addAlong.ts';
import { addLoop, nestOf } from '../loops/loopNest.ts';
import { eliminateComponent, solveComponent } from './solveComponent.ts';
import type { SweepComponent } from './sweepComponent.ts';

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
