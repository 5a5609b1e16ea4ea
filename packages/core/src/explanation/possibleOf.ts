import type { CauseRanking } from '../belief/belief.ts';
import type { ByCause } from './explanation.ts';

/** The posterior without the causes that were ruled out at intake. */
export function possibleOf({ ranking }: Pick<CauseRanking, 'ranking'>): ByCause {
  return Object.fromEntries(ranking.map(({ cause, probability }) => [cause, probability]));
}
