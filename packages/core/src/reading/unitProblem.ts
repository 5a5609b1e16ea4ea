import { problemFor } from '../validation/problemFor.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import type { Dimension } from '../units/dimension.ts';
import { unitsOf } from '../units/unitsOf.ts';

/** That a unit is not one of its dimension. */
export function unitProblem(dimension: Dimension, found: string, path: string): Problem {
  const symbols = unitsOf(dimension).map(({ symbol }) => symbol);
  return problemFor('unit-unknown', path, { unit: found, dimension, symbols });
}
