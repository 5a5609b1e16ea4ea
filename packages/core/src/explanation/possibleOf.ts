import type { CauseRanking } from '../belief/belief.ts';
import type { NumberByCause } from './explanation.ts';

/** The posterior without the causes that were ruled out at intake. */
export function possibleOf({ ranking }: Pick<CauseRanking, 'ranking'>): NumberByCause {
  return Object.fromEntries(ranking.map(({ cause, probability }) => [cause, probability]));
}
