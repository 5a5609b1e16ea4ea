import { dimensionOfEntry, type Reading, type ReadingModel, unitsOf } from '@faultodds/core';

/** The units a number may be typed in, the usual one of the workshop first; none where it has none. */
export function unitChoices(model: ReadingModel, kind: Reading['kind']): readonly string[] {
  if (model.kind !== 'measured' || kind === 'trim' || kind === 'counts' || kind === 'part-counts') return [];
  return unitsOf(dimensionOfEntry(model, kind)).map(({ symbol }) => symbol);
}
