import type { Model } from './model.ts';

/** Tests and intake features that ask one question (pairs of kind `same-question`, joined): each name with all names of its question, itself
 * included, in the order of the pairs. What is in no such pair asks a question of its own and is left out. */
export function questionsOf({ dependentPairs }: Pick<Model, 'dependentPairs'>): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, readonly string[]>();
  for (const { a, b, kind } of dependentPairs) {
    if (kind !== 'same-question') continue;
    const joined = [...new Set([...(found.get(a) ?? [a]), ...(found.get(b) ?? [b])])];
    for (const name of joined) found.set(name, joined);
  }
  return found;
}
