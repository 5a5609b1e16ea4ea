import type { CauseRanking } from '../belief/belief.ts';
import type { Facts } from '../belief/facts.ts';
import { rankCauses } from '../belief/rankCauses.ts';
import type { CompiledModel } from '../model/compiledModel.ts';
import type { ByCause, Explanation, Mover, ObservationExplanation } from './explanation.ts';
import { naturalFrequencies } from './naturalFrequencies.ts';
import { weightOfEvidence } from './weightOfEvidence.ts';

/** What every observation of a case did to the ranking, in order, and what the ranking would be without it.
 * Three exact updates per observation: as recorded, alone, and left out.
 * @throws EvidenceError as `rankCauses` does. */
export function explainCase(compiled: CompiledModel, facts: Facts): Explanation {
  const { context, observations } = facts;
  const believe = (kept: Facts['observations']): CauseRanking => rankCauses(compiled, { context, observations: kept });
  const intake = believe([]);
  const beliefs: [CauseRanking, ...CauseRanking[]] = [intake];
  for (let at = 1; at <= observations.length; at += 1) beliefs.push(believe(observations.slice(0, at)));
  const final = beliefs.at(-1) ?? intake;

  const explained = observations.map((observation, at): ObservationExplanation => {
    const [earlier, later] = [beliefs[at] ?? intake, beliefs[at + 1] ?? final];
    const alone = at === 0 ? later : believe([observation]);
    const without = at === observations.length - 1 ? earlier : believe(observations.toSpliced(at, 1));
    const [before, after] = [possible(earlier), possible(later)];
    const weightDecibans = weightOfEvidence(before, after);
    return {
      observation,
      before,
      after,
      weightDecibans,
      weightIfFirstDecibans: weightOfEvidence(possible(intake), alone.posterior),
      weightIfLastDecibans: weightOfEvidence(possible(without), final.posterior),
      likelihoodByCause: likelihoods(earlier, later),
      movers: movers(before, after, weightDecibans),
      rankingWithout: without.ranking,
      of1000: { before: naturalFrequencies(before), after: naturalFrequencies(after) },
    };
  });
  return { facts, beliefs, observations: explained };
}

/** The posterior without the causes that were ruled out at intake. */
function possible({ ranking }: CauseRanking): ByCause {
  return Object.fromEntries(ranking.map(({ cause, probability }) => [cause, probability]));
}

/** Bayes' rule read backwards, right for every kind of observation: P(e | cause) = P(cause | e) P(e) / P(cause). */
function likelihoods(earlier: CauseRanking, later: CauseRanking): ByCause {
  const evidence = Math.exp(later.logProbabilityOfEvidence - earlier.logProbabilityOfEvidence);
  return Object.fromEntries(
    earlier.ranking.flatMap(({ cause, probability }) =>
      probability > 0 ? [[cause, ((later.posterior[cause] ?? 0) / probability) * evidence]] : [],
    ),
  );
}

function movers(before: ByCause, after: ByCause, weightDecibans: ByCause): Mover[] {
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
