import type { Problem } from './faultoddsError.ts';
import { nearestId } from './nearestId.ts';

/** The problem that a list does not hold an id, with the nearest one it holds as a hint; nothing when it does.
 * @param kind the noun, and the first part of the code `<kind>-unknown`. @param where ends the message, as in " of 'coil-swap'". */
export function findUnknownId(
  kind: string,
  id: string,
  list: readonly { readonly id: string }[],
  path: string,
  where = '',
): Problem[] {
  if (list.some((one) => one.id === id)) return [];
  const ids = list.map((one) => one.id);
  return [{ code: `${kind}-unknown`, path, message: `no ${kind} '${id}'${where}`, hint: nearestId(id, ids) }];
}
