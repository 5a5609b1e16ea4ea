import type { ReadingModel } from '../model/readingModel.ts';
import type { Reading } from '../reading/reading.ts';

/** A reading made of what was entered, unchecked: for `parseReading`.
 * @param entries JSON Pointer -> number or unit: those of `readingFields`, and `/unit`, `/exposure/unit` and their like.
 * @example readingOfEntries({ id: 'pressure' }, 'pair', { '/value': 6.8, '/reference': 9.1, '/unit': 'bar' }) */
export function readingOfEntries(
  model: Pick<ReadingModel, 'id'>,
  kind: Reading['kind'],
  entries: Readonly<Record<string, number | string>>,
): unknown {
  const reading: Record<string, unknown> = { kind, measure: model.id };
  // where nothing was entered, the missing numbers are what is wrong, not the shape
  if (kind === 'per-cylinder') reading['values'] = {};
  if (kind === 'counts') reading['counts'] = {};
  if (kind === 'part-counts') Object.assign(reading, { before: { exposure: {} }, after: { exposure: {} } });
  for (const [path, entry] of Object.entries(entries)) {
    const keys = path.split('/').slice(1);
    const last = keys.pop() ?? '';
    let part = reading;
    for (const key of keys) {
      if (!Object.hasOwn(part, key)) setOwn(part, key, {});
      part = part[key] as Record<string, unknown>;
    }
    setOwn(part, last, entry);
  }
  return reading;
}

// never through a setter: `__proto__` is a key like any other, which `parseReading` refuses
function setOwn(part: Record<string, unknown>, key: string, value: unknown): void {
  Object.defineProperty(part, key, { value, enumerable: true, writable: true, configurable: true });
}
