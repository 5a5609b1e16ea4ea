import { coreLanguage } from './coreLanguage.ts';
import { t } from './t.ts';

/** A probability where room is short. Beyond one in a thousand either way only the side is said, never 0 % or 100 %. */
export function shortChance(probability: number): string {
  if (probability < 0.001) return t.rare;
  if (probability > 0.999) return t.nearlySure;
  return coreLanguage.formatProbability(probability);
}
