import { classesByBlock, oneClass, type RootClasses } from './rootClasses.ts';

/** A table that takes part in a sweep, the root taken out: one block over the other variables per class of root states. */
export interface SweepFactor extends RootClasses {
  /** Positions without the root, last fastest in each block. */
  readonly variables: readonly number[];
  /** [class][entry]. */
  readonly blocks: Float64Array;
  /** Entries per block. */
  readonly size: number;
  /** To be added to the logarithm of every entry. */
  readonly logScale: number;
  /** Smallest positive entry. */
  readonly smallest: number;
}

/** Takes the root out of a table over `variables` (last fastest).
 * @param tail numbers per entry: 1, or the states of a child. @param scale whether to divide by the largest entry. */
export function splitByRoot(
  variables: readonly number[],
  values: Float64Array,
  tail: number,
  root: number,
  cardinalities: ArrayLike<number>,
  scale: boolean,
): SweepFactor {
  const roots = cardinalities[root]!;
  let largest = 0;
  let least = Infinity;
  for (const value of values) {
    if (value > largest) largest = value;
    if (value > 0 && value < least) least = value;
  }
  const divide = !scale || largest === 0 ? values : values.map((value) => value / largest);
  const rest = variables.filter((variable) => variable !== root);
  const shared = {
    variables: rest,
    logScale: scale ? Math.log(largest) : 0,
    smallest: scale ? least / largest : least,
  };
  const at = variables.indexOf(root);
  if (at < 0) return { ...shared, ...oneClass(roots), blocks: divide, size: values.length };
  let inner = tail;
  for (let k = at + 1; k < variables.length; k += 1) inner *= cardinalities[variables[k]!]!;
  const size = values.length / roots;
  const byRoot = new Float64Array(values.length);
  for (let from = 0, outer = 0; from < values.length; outer += inner) {
    for (let r = 0; r < roots; r += 1, from += inner) byRoot.set(divide.subarray(from, from + inner), r * size + outer);
  }
  const classes = classesByBlock(byRoot, size, roots);
  const blocks = new Float64Array(classes.firstOf.length * size);
  classes.firstOf.forEach((first, c) => blocks.set(byRoot.subarray(first * size, (first + 1) * size), c * size));
  return { ...shared, ...classes, blocks, size };
}
