import type { CauseRanking } from '../belief/belief.ts';
import { contextPrior } from '../belief/contextPrior.ts';
import type { Facts } from '../evidence/facts.ts';
import { rankCauses, rankedOf } from '../belief/rankCauses.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { contentKey } from './contentKey.ts';
import { explainMove } from './explainMove.ts';
import type { Explanation, ObservationExplanation } from './explanation.ts';
import { possibleOf } from './possibleOf.ts';
import { posteriorsWithoutEach } from './posteriorsWithoutEach.ts';
import { rankAfterEach } from './rankAfterEach.ts';
import { weightOfEvidence } from './weightOfEvidence.ts';

/** What every observation of a case did to the ranking, in order, and what the ranking would be without it. At most three exact sweeps
 * per observation: as recorded, alone, and left out; observations that say the same share the last two. Where only the way of the
 * ranking is wanted, `rankAfterEach` and `explainMove` cost a third, and one sweep for one more observation.
 * @throws EvidenceError as `rankCauses` does.
 * @example
 * ```ts
 * const { observations } = explainCase(pump, { context: {}, observations: [{ kind: 'result', id: 'one', test: 'fuse-look', outcome: 'blown' }] });
 * observations[0]?.of1000.after; // { 'fuse-blown': 971, 'hose-leak': 12, clogged: 9, 'motor-worn': 7, 'not-listed': 1 }
 * observations[0]?.weightIfLastDecibans['fuse-blown']; // 16.9461
 * ``` */
export function explainCase(compiled: CompiledModel, facts: Facts): Explanation {
  const { context, observations } = facts;
  const beliefs = rankAfterEach(compiled, facts);
  const [intake] = beliefs;
  const final = beliefs.at(-1) ?? intake;
  const atIntake = possibleOf(intake);
  const prior = contextPrior(compiled, context);
  const without = posteriorsWithoutEach(compiled, facts, prior);
  const madeAlone = new Map<string, CauseRanking>();
  const alone = (observation: Facts['observations'][number]): CauseRanking => {
    const content = contentKey(observation);
    const ranking = madeAlone.get(content) ?? rankCauses(compiled, { context, observations: [observation] });
    madeAlone.set(content, ranking);
    return ranking;
  };

  const explained = observations.map((observation, at): ObservationExplanation => {
    const [earlier, later] = [beliefs[at] ?? intake, beliefs[at + 1] ?? final];
    const rankingWithout = rankedOf(compiled, { prior, posterior: without[at] ?? prior });
    return {
      ...explainMove(observation, earlier, later),
      weightIfFirstDecibans: weightOfEvidence(atIntake, possibleOf(at === 0 ? later : alone(observation))),
      weightIfLastDecibans: weightOfEvidence(possibleOf({ ranking: rankingWithout }), final.posterior),
      rankingWithout,
    };
  });
  return { facts, beliefs, observations: explained };
}
