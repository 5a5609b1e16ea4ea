import { randomNormal } from 'd3-random';
import type { Random } from './random.ts';

// 95 % point of the standard normal
const Z95 = 1.6448536269514722;

/** A positive number drawn from the log-normal whose median is `best` and whose spread is that of the 5-95 % range `low` to `high`.
 * A range of no width, or one that reaches 0, leaves `best`. */
export function drawLogNormal(
  { best, low, high }: { readonly best: number; readonly low: number; readonly high: number },
  random: Random,
): number {
  if (!(low > 0) || !(high > low)) return best;
  const sigma = Math.log(high / low) / (2 * Z95);
  return best * Math.exp(randomNormal.source(random)(0, sigma)());
}
