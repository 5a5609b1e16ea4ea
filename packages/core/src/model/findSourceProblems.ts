import type { Problem } from '../errors/faultoddsError.ts';
import { problemFor } from '../validation/problemFor.ts';
import { jsonPointer } from '../errors/jsonPointer.ts';
import type { Model } from './model.ts';

/** Numbers whose source does not exist, and ranges that do not hold their best estimate. Walks the whole model. */
export function findSourceProblems(model: Model): Problem[] {
  const sources = new Set(model.sources.map((source) => source.id));
  const found: Problem[] = [];
  const walk = (value: unknown, path: readonly PropertyKey[]): void => {
    if (typeof value !== 'object' || value === null) return;
    if (Array.isArray(value)) {
      value.forEach((item, at) => walk(item, [...path, at]));
      return;
    }
    const { source, low, best, high } = value as Record<string, unknown>;
    if (typeof source === 'string' && !sources.has(source)) {
      const parts = { id: source, sources: [...sources] };
      found.push(problemFor('source-unknown/listed', jsonPointer([...path, 'source']), parts));
    }
    if (
      typeof low === 'number' &&
      typeof best === 'number' &&
      typeof high === 'number' &&
      !(low <= best && best <= high)
    ) {
      found.push(problemFor('range-disordered', jsonPointer([...path, 'best']), { low, best, high }));
    }
    for (const [key, inner] of Object.entries(value)) walk(inner, [...path, key]);
  };
  walk(model, []);
  const { low, high } = model.contextCap;
  if (!(low <= 1 && high >= 1)) {
    found.push(problemFor('range-disordered/cap', '/contextCap', { low, high }));
  }
  return found;
}
