import { keysOfPointer } from '../errors/jsonPointer.ts';
import type { Model } from './model.ts';

/** The number of a model at a JSON Pointer; `undefined` where no number is.
 * @example numberAt(pump.model, '/causes/0/weight/best') // 400 */
export function numberAt(model: Model, path: string): number | undefined {
  const found = keysOfPointer(path).reduce<unknown>(
    (part, key) =>
      typeof part === 'object' && part !== null && Object.hasOwn(part, key)
        ? (part as Record<string, unknown>)[key]
        : undefined,
    model,
  );
  return typeof found === 'number' ? found : undefined;
}
