import { contractAlong } from '../loops/contractAlong.ts';
import { refineClasses, type RootClasses } from './rootClasses.ts';
import { takeZeros, type Scratch } from '../loops/scratch.ts';
import { fewEnough } from '../loops/tableSize.ts';

/** A non-negative table over variables for each class of root states. */
export interface ClassFactor extends RootClasses {
  readonly variables: readonly number[];
  /** [class][entry], last variable fastest, `size` entries each. */
  readonly blocks: Float64Array;
  readonly size: number;
  /** Per class, to be added to the logarithm of every entry; null for zeros. */
  readonly logs: Float64Array | null;
}

/** The product of two factors with one variable (or none: -1) summed out, in one walk over the product. Classes of the result are those
 * that tell both factors' classes apart: a table that few root states differ in stays cheap. Its blocks are taken from `scratch`. */
export function contractFactors(
  a: ClassFactor,
  b: ClassFactor,
  summed: number,
  cardinalities: ArrayLike<number>,
  scratch: Scratch,
): ClassFactor {
  const [left, right] = a.size <= b.size ? [a, b] : [b, a];
  const fresh = left.variables.filter((variable) => !right.variables.includes(variable));
  const walked = [...fresh, ...right.variables];
  const variables = walked.filter((variable) => variable !== summed);
  const n = new Int32Array(walked.length + 2);
  const stepD = new Int32Array(walked.length + 2);
  const stepA = new Int32Array(walked.length + 2);
  const stepB = new Int32Array(walked.length + 2);
  let count = 0;
  let size = 1;
  let block = 1;
  for (let k = walked.length - 1; k >= 0; k -= 1) {
    const variable = walked[k]!;
    const states = cardinalities[variable]!;
    const [d, i, j] = [
      variable === summed ? 0 : size,
      stepOf(left, variable, cardinalities),
      k < fresh.length ? 0 : block,
    ];
    if (variable !== summed) size *= states;
    if (k >= fresh.length) block *= states;
    if (states === 1) continue;
    const last = count - 1;
    if (last >= 0 && d === stepD[last]! * n[last]! && i === stepA[last]! * n[last]! && j === stepB[last]! * n[last]!)
      n[last]! *= states;
    else {
      [n[count], stepD[count], stepA[count], stepB[count]] = [states, d, i, j];
      count += 1;
    }
  }
  // any order of loops gives the same sums; the longest inside costs least, and next to it the one summed out
  const swap = (k: number, other: number): void => {
    for (const steps of [n, stepD, stepA, stepB]) [steps[k], steps[other]] = [steps[other]!, steps[k]!];
  };
  swap(0, n.indexOf(Math.max(...n)));
  const sum = stepD.subarray(0, count).indexOf(0);
  if (sum > 1) swap(1, sum);
  const { classOf, firstOf } = refineClasses(left, right);
  const blocks = takeZeros(scratch, fewEnough(firstOf.length * size, variables.length));
  let logs: Float64Array | null = null;
  firstOf.forEach((first, c) => {
    const [p, q] = [left.classOf[first]!, right.classOf[first]!];
    contractAlong(
      blocks,
      c * size,
      left.blocks,
      p * left.size,
      right.blocks,
      q * right.size,
      n,
      stepD,
      stepA,
      stepB,
      count,
    );
    let largest = 0;
    // nearly always the first number is large enough
    for (let k = c * size; k < (c + 1) * size && largest < 1e-30; k += 1) largest = Math.max(largest, blocks[k]!);
    const far = largest > 0 && largest < 1e-30;
    if (far) for (let k = c * size; k < (c + 1) * size; k += 1) blocks[k]! /= largest;
    if (!far && left.logs === null && right.logs === null) return;
    logs ??= new Float64Array(firstOf.length);
    logs[c] = (left.logs?.[p] ?? 0) + (right.logs?.[q] ?? 0) + (far ? Math.log(largest) : 0);
  });
  return { variables, classOf, firstOf, blocks, size, logs };
}

function stepOf(factor: ClassFactor, variable: number, cardinalities: ArrayLike<number>): number {
  const at = factor.variables.indexOf(variable);
  if (at < 0) return 0;
  let step = 1;
  for (let k = factor.variables.length - 1; k > at; k -= 1) step *= cardinalities[factor.variables[k]!]!;
  return step;
}
