import type { Model } from './model.ts';
import { keyOfName, makeNextNames } from './makeNextNames.ts';
import type { PartName } from './renaming.ts';

/** What a part of an earlier version is called now: itself where nothing was renamed, several where an outcome became several, none where
 * it is gone. Whether the model has such a part is another question. */
export type NamesToday = (name: PartName) => readonly PartName[];

/** Follows the renamings of a model to their end. Each name is followed once.
 * @example
 * ```ts
 * const namesToday = makeNamesToday({ renamed: [{ was: { cause: 'coil-bad' }, is: { cause: 'coil-weak' } }] });
 * namesToday({ cause: 'coil-bad' }); // [{ cause: 'coil-weak' }]
 * namesToday({ cause: 'coil-weak' }); // [{ cause: 'coil-weak' }]
 * ``` */
export function makeNamesToday({ renamed = [] }: Pick<Model, 'renamed'>): NamesToday {
  const next = makeNextNames(renamed);
  const followed = new Map<string, readonly PartName[]>();
  return function follow(name): readonly PartName[] {
    const key = keyOfName(name);
    const already = followed.get(key);
    if (already !== undefined) return already;
    followed.set(key, []); // a circle, which `parseModel` refuses, ends here
    const names = next(name)?.flatMap(follow) ?? [name];
    const found = [...new Map(names.map((one) => [keyOfName(one), one])).values()];
    followed.set(key, found);
    return found;
  };
}
