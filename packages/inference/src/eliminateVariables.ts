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
  const kept = new Set([...keep, ...tail]);
  // what only one factor speaks of is summed out of it at once
  let pool = factors.map((factor) => {
    const rest = factor.variables.filter(
      (variable) =>
        kept.has(variable) || factors.some((other) => other !== factor && other.variables.includes(variable)),
    );
    return rest.length === factor.variables.length
      ? factor
      : { variables: rest, values: sumTo(factor, rest, cardinalities) };
  });
  for (const variable of factorOrder(pool, kept, cardinalities)) {
    const involved = pool.filter((factor) => factor.variables.includes(variable));
    pool = pool.filter((factor) => !factor.variables.includes(variable));
    const scope = [...new Set(involved.flatMap((factor) => factor.variables))];
    const after = scope.includes(batch) ? tail : [];
    const rest = [...scope.filter((other) => other !== variable && other !== batch), ...after];
    const block = after.length > 0 ? width : 1;
    const scale = (values: Float64Array): void => rescale(values, block, logScale);
    const variables = [variable, ...rest];
    const product =
      involved.length === 1
        ? involved[0]!
        : { variables, values: multiplyFactors(involved, variables, cardinalities, scale) };
    const summed = sumTo(product, rest, cardinalities);
    rescale(summed, block, logScale);
    pool.push({ variables: rest, values: summed });
  }
  const values = multiplyFactors(pool, [...keep, ...tail], cardinalities, (product) =>
    rescale(product, width, logScale),
  );
  rescale(values, width, logScale);
  return { values, logScale };
}

function sumTo(factor: Factor, rest: readonly number[], cardinalities: ArrayLike<number>): Float64Array {
  const values = new Float64Array(rest.reduce((size, variable) => size * cardinalities[variable]!, 1));
  const nest = nestOf(factor.variables, rest, cardinalities);
  addAlong(factor.values, 0, values, 0, nest.n, nest.a, nest.b, 0, nest.count);
  return values;
}

/** Divides by the largest entry (of each batch entry) and adds its logarithm to `logScale`; an all-zero batch entry gets -Infinity. */
function rescale(values: Float64Array, width: number, logScale: Float64Array): void {
  const largest = new Float64Array(width);
  for (let at = 0; at < values.length; at += width) {
    for (let b = 0; b < width; b += 1) if (values[at + b]! > largest[b]!) largest[b] = values[at + b]!;
  }
  let some = false;
  for (let b = 0; b < width; b += 1) {
    const log = Math.log(largest[b]!);
    // scaling is for the range of doubles only: ordinary tables are left alone
    const far = largest[b]! < 1e-30 || largest[b]! > 1e30;
    if (far && largest[b]! > 0) some = true;
    else largest[b] = 1;
    if (!far) continue;
    if (width === logScale.length) logScale[b]! += log;
    else for (let k = 0; k < logScale.length; k += 1) logScale[k]! += log;
  }
  if (!some) return;
  for (let at = 0; at < values.length; at += width) for (let b = 0; b < width; b += 1) values[at + b]! /= largest[b]!;
}
