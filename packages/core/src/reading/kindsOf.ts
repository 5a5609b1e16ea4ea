import type { ReadingModel } from '../model/readingModel.ts';
import type { Reading } from './reading.ts';

/** The kinds of entry a reading of a test is taken in, the usual one first.
 * @example kindsOf(compressionReading) // ['per-cylinder', 'single'] */
export function kindsOf(model: ReadingModel): readonly Reading['kind'][] {
  if (model.kind !== 'measured') return [model.kind];
  switch (model.compare) {
    case 'suspect-to-highest':
    case 'suspect-to-neighbours':
    case 'suspect-off-neighbours':
    case 'suspect-minus-neighbours':
      return ['per-cylinder', 'single'];
    case 'to-reference':
    case 'minus-reference':
      return ['pair', 'single'];
    case 'loss-from-reference':
      return ['single', 'pair'];
    case 'trim-total':
      return ['trim', 'single'];
    case 'suspect-alone':
      return ['single'];
  }
}
