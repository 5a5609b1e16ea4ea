import { jsonPointer } from '../errors/jsonPointer.ts';
import { problemFor } from '../validation/problemFor.ts';
import type { Problem } from '../errors/faultoddsError.ts';

/** Every own `__proto__` key, at any depth. JSON can carry it, and copying it key by key would replace a prototype.
 * Walks without recursion, so deep nesting cannot exhaust the stack; each object is visited once. */
export function findUnsafeKeys(input: unknown): Problem[] {
  const problems: Problem[] = [];
  const seen = new Set<object>();
  const waiting: { readonly value: unknown; readonly path: string }[] = [{ value: input, path: '' }];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { value, path } = next;
    if (typeof value !== 'object' || value === null || seen.has(value)) continue;
    seen.add(value);
    for (const key of Object.keys(value)) {
      if (key === '__proto__') {
        problems.push(problemFor('key-unsafe', `${path}/${key}`, { key }));
      } else waiting.push({ value: (value as Record<string, unknown>)[key], path: path + jsonPointer([key]) });
    }
  }
  return problems;
}
