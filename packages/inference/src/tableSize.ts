import { TreeWidthError } from './treeWidthError.ts';

/** A gibibyte of doubles, the most that `compileNetwork` takes by default. */
const MOST = 2 ** 27;

/** Entries of a table over variables, known to be few enough to be allocated.
 * @throws TreeWidthError before anything is allocated */
export function tableSize(variables: readonly number[], cardinalities: ArrayLike<number>): number {
  const size = variables.reduce((product, variable) => product * cardinalities[variable]!, 1);
  if (size > MOST) throw new TreeWidthError(variables.length - 1, size, size, 8 * size, 8 * MOST);
  return size;
}
