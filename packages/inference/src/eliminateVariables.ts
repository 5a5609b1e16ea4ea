import type { Factor } from './factor.ts';
import { multiplyFactors } from './multiplyFactors.ts';

/** What is left after elimination: `values` over the kept variables (batch variable fastest, if any), to be multiplied by
 * exp(`logScale[b]`) for batch entry b. */
export interface EliminationResult {
  readonly values: Float64Array;
  readonly logScale: Float64Array;
}

/** Sums every variable but `keep` and `batch` out of a product of factors (bucket elimination, smallest product table next).
 * Tables are rescaled per batch entry after every step, and the logarithms kept, so that long products do not underflow.
 * @param keep order of the result's variables. @param batch variable that stays and is scaled entry by entry; -1 for none.
 * Source: Dechter 1999, Artificial Intelligence 113:41-85 (bucket elimination). */
export function eliminateVariables(
  factors: readonly Factor[],
  keep: readonly number[],
  batch: number,
  cardinalities: ArrayLike<number>,
): EliminationResult {
  const width = batch < 0 ? 1 : cardinalities[batch]!;
  const tail = batch < 0 ? [] : [batch];
  const logScale = new Float64Array(width);
  const kept = new Set([...keep, ...tail]);
  let pool = [...factors];
  const open = new Set(pool.flatMap((factor) => factor.variables).filter((variable) => !kept.has(variable)));
  while (open.size > 0) {
    let best = -1;
    let bestSize = Infinity;
    let bestScope: number[] = [];
    for (const variable of open) {
      const scope = new Set<number>();
      for (const factor of pool)
        if (factor.variables.includes(variable)) for (const other of factor.variables) scope.add(other);
      let size = 1;
      for (const other of scope) size *= cardinalities[other]!;
      if (size < bestSize) {
        best = variable;
        bestSize = size;
        bestScope = [...scope];
      }
    }
    const involved = pool.filter((factor) => factor.variables.includes(best));
    pool = pool.filter((factor) => !factor.variables.includes(best));
    const batched = batch >= 0 && bestScope.includes(batch);
    const rest = bestScope.filter((variable) => variable !== best && variable !== batch);
    const after = batched ? tail : [];
    const product = multiplyFactors(involved, [...rest, best, ...after], cardinalities, (values) =>
      rescale(values, batched ? width : 1, logScale),
    );
    const summed = sumBlocks(product, cardinalities[best]!, batched ? width : 1);
    rescale(summed, batched ? width : 1, logScale);
    pool.push({ variables: [...rest, ...after], values: summed });
    open.delete(best);
  }
  const values = multiplyFactors(pool, [...keep, ...tail], cardinalities, (values) => rescale(values, width, logScale));
  rescale(values, width, logScale);
  return { values, logScale };
}

function sumBlocks(product: Float64Array, count: number, block: number): Float64Array {
  const summed = new Float64Array(product.length / count);
  for (let to = 0, from = 0; to < summed.length; to += block) {
    for (let state = 0; state < count; state += 1) {
      for (let k = 0; k < block; k += 1, from += 1) summed[to + k]! += product[from]!;
    }
  }
  return summed;
}

/** Divides by the largest entry (of each batch entry) and adds its logarithm to `logScale`; an all-zero batch entry gets -Infinity. */
function rescale(values: Float64Array, width: number, logScale: Float64Array): void {
  for (let b = 0; b < width; b += 1) {
    let largest = 0;
    for (let at = b; at < values.length; at += width) if (values[at]! > largest) largest = values[at]!;
    if (largest > 0) for (let at = b; at < values.length; at += width) values[at]! /= largest;
    const log = Math.log(largest);
    if (width === logScale.length) logScale[b]! += log;
    else for (let k = 0; k < logScale.length; k += 1) logScale[k]! += log;
  }
}
