import { makeProblem } from '../errors/makeProblem.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import type { Dimension } from '../model/dimension.ts';
import { unitsOf } from './unitsOf.ts';

/** That a unit is not one of its dimension. */
export function unitProblem(dimension: Dimension, found: string, path: string): Problem {
  const symbols = unitsOf(dimension).map(({ symbol }) => symbol);
  return makeProblem('unit-unknown', path, { unit: found, dimension, symbols });
}
