import type { Problem } from '../errors/faultoddsError.ts';
import type { Dimension } from '../model/readingModel.ts';
import { unitsOf } from './unitsOf.ts';

/** That a unit is not one of its dimension. */
export function unitProblem(dimension: Dimension, found: string, path: string): Problem {
  const symbols = unitsOf(dimension).map(({ symbol }) => symbol);
  return {
    code: 'unit-unknown',
    path,
    message: `'${found}' is no unit of ${dimension === 'relative' ? 'this reading' : dimension}`,
    hint: `use ${symbols.join(', ')}`,
  };
}
