import type { Dimension } from '../units/dimension.ts';
import type { MeasuredReading } from '../model/readingModel.ts';
import type { MeasuredValues } from './reading.ts';

/** The dimension, and with it the units (`unitsOf`), in which a measured reading is entered. A single number is the compared value where
 * cylinders or readings are compared (a ratio, a difference), else the reading itself; a loss in per cent is entered as a pair of pressures. */
export function dimensionOfEntry({ compare, measures }: MeasuredReading, kind: MeasuredValues['kind']): Dimension {
  if (kind === 'trim') return 'percent';
  if (kind === 'per-cylinder') return measures;
  if (kind === 'pair') return compare === 'loss-from-reference' ? 'pressure' : measures;
  switch (compare) {
    case 'suspect-to-highest':
    case 'suspect-to-neighbours':
    case 'to-reference':
      return 'ratio';
    case 'suspect-off-neighbours':
    case 'loss-from-reference':
    case 'trim-total':
      return 'percent';
    case 'suspect-alone':
    case 'suspect-minus-neighbours':
    case 'minus-reference':
      return measures;
  }
}
