import type { Reading } from '../../../../reading/reading.ts';
import { describeReading as inLanguage } from '../../../sentences/describeReading.ts';
import { german } from '../german.ts';

/** Numbers as they were read, in a phrase: "9,2 bar an Zylinder 3, 12,1 bis 12,5 bar an den übrigen". */
export function describeReading(reading: Reading): string {
  return inLanguage(reading, german);
}
