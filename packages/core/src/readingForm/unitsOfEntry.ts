import type { ReadingModel } from '../model/readingModel.ts';
import { unitsOf } from '../units/unitsOf.ts';
import { dimensionOfEntry } from '../reading/dimensionOfEntry.ts';
import type { Reading } from '../reading/reading.ts';

/** Symbols of the units in which a reading may be entered, the canonical one first; none for trims, which are in per cent, and counts.
 * @example unitsOfEntry(compressionReading, 'per-cylinder').slice(0, 3) // ['kPa', 'bar', 'psi'] */
export function unitsOfEntry(model: ReadingModel, kind: Reading['kind']): readonly string[] {
  if (model.kind !== 'measured' || kind === 'trim' || kind === 'counts' || kind === 'part-counts') return [];
  return unitsOf(dimensionOfEntry(model, kind)).map(({ symbol }) => symbol);
}
