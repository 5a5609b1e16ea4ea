/** Whether a list holds anything, as its type says afterwards. */
export function atLeastOne<T>(list: readonly T[]): list is readonly [T, ...T[]] {
  return list.length > 0;
}
