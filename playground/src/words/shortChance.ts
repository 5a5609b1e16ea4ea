import { formatProbability } from '@faultodds/core/words/en';

/** A probability where room is short. Beyond one in a thousand either way only the side is said, never 0 % or 100 %. */
export function shortChance(probability: number): string {
  if (probability < 0.001) return '< 0.1%';
  if (probability > 0.999) return '> 99.9%';
  return formatProbability(probability);
}
