import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { CauseRanking, RankedCause } from './belief.ts';
import type { Facts } from '../evidence/facts.ts';
import { sweepFacts, type SweptFacts } from './sweepFacts.ts';

/** Exact ranking of causes given intake facts and observations, whose order does not matter. Cheaper than `beliefOf`, which also
 * says what every test would show.
 * @throws EvidenceError unknown or inapplicable ids, malformed likelihoods, or evidence that no cause can produce.
 * @example rankCauses(pump, { context: {}, observations: [] }).ranking[0] // { cause: 'fuse-blown', probability: 0.4, prior: 0.4 } */
export function rankCauses(compiled: CompiledModel, facts: Facts): CauseRanking {
  return rankingOf(compiled, sweepFacts(compiled, facts, { posteriorOnly: true }));
}

/** Possible causes, most likely first. @param swept cause -> probability, by the compiled order. */
export function rankedOf(
  { causes }: CompiledModel,
  swept: Pick<SweptFacts, 'prior' | 'posterior'>,
): readonly RankedCause[] {
  return causes
    .map((cause, at): RankedCause => ({ cause, probability: swept.posterior[at]!, prior: swept.prior[at]! }))
    .filter(({ prior }) => prior > 0)
    .sort((a, b) => b.probability - a.probability);
}

/** The ranking in a sweep. */
export function rankingOf(
  compiled: CompiledModel,
  swept: Omit<SweptFacts, 'tests' | 'outcomeGivenCause'>,
): CauseRanking {
  const { causes, model, structure } = compiled;
  const byCause = (values: Float64Array): Record<string, number> =>
    Object.fromEntries(causes.map((id, at) => [id, values[at]!]));
  const inGroup = new Map(model.causeGroups.map(({ id }) => [id, 0]));
  structure.hypotheses.forEach(({ members }, at) => {
    const groups = new Set(members.map((member) => model.causes[member]!.group));
    for (const group of groups) inGroup.set(group, inGroup.get(group)! + swept.posterior[at]!);
  });
  return {
    facts: swept.facts,
    prior: byCause(swept.prior),
    posterior: byCause(swept.posterior),
    ranking: rankedOf(compiled, swept),
    groups: [...inGroup]
      .map(([group, probability]) => ({ group, probability }))
      .sort((a, b) => b.probability - a.probability),
    ruledOut: causes.filter((_, at) => swept.prior[at] === 0),
    logProbabilityOfEvidence: swept.logProbabilityOfEvidence,
  };
}
