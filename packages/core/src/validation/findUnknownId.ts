import type { Problem } from '../errors/faultoddsError.ts';
import { problemFor } from './problemFor.ts';
import { nearestId } from './nearestId.ts';

/** The problem that a list does not hold an id, with the nearest one it holds as a hint; nothing when it does.
 * @param kind the noun, and the first part of the code `<kind>-unknown`. @param of what the list belongs to, where that is not plain. */
export function findUnknownId(
  kind: string,
  id: string,
  list: readonly { readonly id: string }[],
  path: string,
  of?: string,
): Problem[] {
  return list.some((one) => one.id === id)
    ? []
    : [
        unknownId(
          kind,
          id,
          list.map((one) => one.id),
          path,
          of,
        ),
      ];
}

/** The problem that an id is none of those known. */
export function unknownId(kind: string, id: string, known: Iterable<string>, path: string, of?: string): Problem {
  const parts = { kind, id, nearest: nearestId(id, known), ...(of === undefined ? {} : { of }) };
  return problemFor('unknown', path, parts, `${kind}-unknown`);
}
