import type { CauseRanking } from '../belief/belief.ts';
import type { Observation } from '../evidence/observation.ts';
import type { NumberByCause, MovedCause, ObservationMove } from './explanation.ts';
import { naturalFrequencies } from './naturalFrequencies.ts';
import { possibleOf } from './possibleOf.ts';
import { weightOfEvidence } from './weightOfEvidence.ts';

/** As much of a ranking as a move is worked out from. */
export type MomentRanking = Pick<CauseRanking, 'posterior' | 'ranking' | 'logProbabilityOfEvidence'>;

/** How an observation moved the ranking, from the rankings just before and just after it: arithmetic only, nothing is swept. O(causes).
 * @example
 * ```ts
 * const [before, after = before] = rankAfterEach(pump, {
 *   context: {},
 *   observations: [{ kind: 'result', id: 'one', test: 'fuse-look', outcome: 'blown' }],
 * });
 * const move = explainMove({ kind: 'result', id: 'one', test: 'fuse-look', outcome: 'blown' }, before, after);
 * move.weightDecibans['fuse-blown']; // 16.9461
 * move.likelihoodByCause['fuse-blown']; // 0.99
 * ``` */
export function explainMove(observation: Observation, earlier: MomentRanking, later: MomentRanking): ObservationMove {
  const [before, after] = [possibleOf(earlier), possibleOf(later)];
  const weightDecibans = weightOfEvidence(before, after);
  return {
    observation,
    before,
    after,
    weightDecibans,
    likelihoodByCause: likelihoods(earlier, later),
    movers: movers(before, after, weightDecibans),
    of1000: { before: naturalFrequencies(before), after: naturalFrequencies(after) },
  };
}

/** Bayes' rule read backwards, right for every kind of observation: P(e | cause) = P(cause | e) P(e) / P(cause). */
function likelihoods(earlier: MomentRanking, later: MomentRanking): NumberByCause {
  const evidence = Math.exp(later.logProbabilityOfEvidence - earlier.logProbabilityOfEvidence);
  return Object.fromEntries(
    earlier.ranking.flatMap(({ cause, probability }) =>
      probability > 0 ? [[cause, ((later.posterior[cause] ?? 0) / probability) * evidence]] : [],
    ),
  );
}

function movers(before: NumberByCause, after: NumberByCause, weightDecibans: NumberByCause): MovedCause[] {
  return Object.keys(weightDecibans)
    .map((cause) => ({
      cause,
      before: before[cause] ?? 0,
      after: after[cause] ?? 0,
      weightDecibans: weightDecibans[cause] ?? 0,
    }))
    .filter(({ before: was, after: is }) => Math.abs(is - was) > 1e-12) // below it is rounding, not a move
    .sort((a, b) => Math.abs(b.after - b.before) - Math.abs(a.after - a.before))
    .slice(0, 5);
}
