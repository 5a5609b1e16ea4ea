import { logDensity, type Distribution } from '../distributions/logDensity.ts';
import type { MeasuredReading, ReadingDistribution } from '../model/readingModel.ts';

/** How strongly a compared value supports each distribution of a reading, as natural logs of its density over that of a reading that is
 * anything in the range alike: 0 says nothing. Each is a mixture with the wild share, so that no single number speaks stronger than
 * log(share): a slip of the pen can mislead, but not overrule everything else. All 0 outside the range.
 * Length = number of distributions. Source of the mixture: Box & Tiao 1968, Biometrika 55:119-129 (outliers as a mixture). */
export function logSupportOfReading({ distributions, wild }: MeasuredReading, compared: number): Float64Array {
  const { low, high, share } = wild;
  if (!(compared >= low && compared <= high)) return new Float64Array(distributions.length);
  return Float64Array.from(distributions, (given) => {
    const logRatio = logDensity(distributionOf(given), compared, low, high) + Math.log(high - low);
    return Math.log(share + (1 - share) * Math.exp(logRatio));
  });
}

function distributionOf({ family, mean, sd = 0, shape = 0 }: ReadingDistribution): Distribution {
  return family === 'gamma' ? { family, mean, shape } : { family, mean, sd };
}
