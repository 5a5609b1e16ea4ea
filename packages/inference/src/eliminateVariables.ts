import { addAlong } from './addAlong.ts';
import type { Factor } from './factor.ts';
import { factorOrder } from './factorOrder.ts';
import { nestOf } from './loopNest.ts';
import { multiplyFactors } from './multiplyFactors.ts';

/** What is left after elimination: `values` over the kept variables (batch variable fastest, if any), to be multiplied by
 * exp(`logScale[b]`) for batch entry b. */
export interface Eliminated {
  readonly values: Float64Array;
  readonly logScale: Float64Array;
}

/** Sums every variable but `keep` and `batch` out of a product of factors (bucket elimination).
 * Tables are rescaled per batch entry after every step, and the logarithms kept, so that long products do not underflow.
 * @param keep order of the result's variables. @param batch variable that stays and is scaled entry by entry; -1 for none.
 * Source: Dechter 1999, Artificial Intelligence 113:41-85 (bucket elimination). */
export function eliminateVariables(
  factors: readonly Factor[],
  keep: readonly number[],
  batch: number,
  cardinalities: ArrayLike<number>,
): Eliminated {
  const width = batch < 0 ? 1 : cardinalities[batch]!;
  const tail = batch < 0 ? [] : [batch];
  const logScale = new Float64Array(width);
  let pool = [...factors];
  for (const variable of factorOrder(factors, new Set([...keep, ...tail]), cardinalities)) {
    const involved = pool.filter((factor) => factor.variables.includes(variable));
    pool = pool.filter((factor) => !factor.variables.includes(variable));
    const scope = [...new Set(involved.flatMap((factor) => factor.variables))];
    const after = scope.includes(batch) ? tail : [];
    const rest = [...scope.filter((other) => other !== variable && other !== batch), ...after];
    const block = after.length > 0 ? width : 1;
    const product = multiplyFactors(involved, [variable, ...rest], cardinalities, (values) =>
      rescale(values, block, logScale),
    );
    const summed = new Float64Array(product.length / cardinalities[variable]!);
    const nest = nestOf([variable, ...rest], rest, cardinalities);
    addAlong(product, 0, summed, 0, nest.n, nest.a, nest.b, 0, nest.count);
    rescale(summed, block, logScale);
    pool.push({ variables: rest, values: summed });
  }
  const values = multiplyFactors(pool, [...keep, ...tail], cardinalities, (product) =>
    rescale(product, width, logScale),
  );
  rescale(values, width, logScale);
  return { values, logScale };
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
