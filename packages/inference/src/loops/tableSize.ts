import { TreeWidthError } from '../errors/treeWidthError.ts';

/** A gibibyte of doubles, the most that `compileNetwork` takes by default. */
const MOST = 2 ** 27;

/** Entries of a table over variables, known to be few enough to be allocated.
 * @throws TreeWidthError before anything is allocated */
export function tableSize(variables: readonly number[], cardinalities: ArrayLike<number>): number {
  return fewEnough(
    variables.reduce((product, variable) => product * cardinalities[variable]!, 1),
    variables.length,
  );
}

/** Entries of a table over so many variables, when they are few enough to be allocated.
 * @throws TreeWidthError before anything is allocated */
export function fewEnough(entries: number, variables: number): number {
  if (entries > MOST) throw new TreeWidthError(variables - 1, entries, entries, 8 * entries, 8 * MOST);
  return entries;
}
