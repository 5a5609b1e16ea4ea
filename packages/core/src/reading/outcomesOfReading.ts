import type { Test } from '../model/model.ts';
import { bandOf, outcomeBeyond } from './bandOf.ts';
import { comparedValue } from './comparedValue.ts';
import type { Reading } from './reading.ts';

/** The outcomes of a test that may be noted beside a reading of it: what the number can be called. None beside counts, which carry their
 * own weight for every outcome. The reading must have passed `findReadingProblems`. */
export function outcomesOfReading({ readings = [] }: Test, reading: Reading): readonly string[] {
  const model = readings.find(({ id }) => id === reading.measure);
  if (model?.kind !== 'measured' || reading.kind === 'counts' || reading.kind === 'part-counts') return [];
  const { value } = comparedValue(model, reading);
  const beyond = outcomeBeyond(model, value);
  return beyond === undefined ? bandOf(model, value) : [beyond];
}
