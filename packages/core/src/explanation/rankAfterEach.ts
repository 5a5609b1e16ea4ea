import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import { sweepModel } from '../compiled/sweepModel.ts';
import type { CauseRanking } from '../belief/belief.ts';
import { type EvidencePart, evidencePartOf } from '../evidence/evidencePart.ts';
import { factorsOfGroup } from '../evidence/factorsOfGroup.ts';
import type { Facts } from '../evidence/facts.ts';
import { posteriorOf } from '../belief/posteriorOf.ts';
import { rankingOf } from '../belief/rankCauses.ts';
import { sweepFacts } from '../belief/sweepFacts.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';

/** What a trail begins with. */
export interface RankAfterEachOptions {
  /** Observations already followed: the rankings of the moments before this many are left out. Default 0, from intake on. */
  readonly from?: number;
}

/** The ranking at every moment of a case: after the intake facts, then after each observation, in the order they were made. One sweep per
 * moment; what is observed next is multiplied onto what was derived before it.
 * @returns moments `from` to the number of observations, both included: at least one.
 * @throws EvidenceError as `rankCauses` does, of the whole case.
 * @example
 * ```ts
 * const moments = rankAfterEach(pump, { context: {}, observations: [{ kind: 'result', id: 'one', test: 'fuse-look', outcome: 'blown' }] });
 * moments.map(({ posterior }) => posterior['fuse-blown']); // [0.4, 0.9706]
 * ``` */
export function rankAfterEach(
  compiled: CompiledModel,
  facts: Facts,
  options: RankAfterEachOptions = {},
): readonly [CauseRanking, ...CauseRanking[]] {
  const { context, observations } = facts;
  const { prior } = sweepFacts(compiled, facts, { posteriorOnly: true }); // checks everything once
  const from = Math.min(options.from ?? 0, observations.length);
  const parts = new Map<string, readonly EvidencePart[]>();
  // repairs first, as in `evidenceOf`: the kernel knows the same factors in the same order again
  const factors = {
    repair: new Map<string, readonly LikelihoodFactor[]>(),
    run: new Map<string, readonly LikelihoodFactor[]>(),
  };
  const take = (at: number): void => {
    const part = evidencePartOf(compiled, observations[at]!);
    if (part === undefined) return;
    const group = [...(parts.get(part.group) ?? []), part];
    parts.set(part.group, group);
    factors[part.kind].set(part.group, factorsOfGroup(compiled, group, context));
  };
  const rank = (moment: number): CauseRanking => {
    const likelihoods = [...factors.repair.values(), ...factors.run.values()].flat();
    const { logEvidenceGivenRoot } = sweepModel(compiled, { likelihoods, targets: [] });
    const seen = { context, observations: observations.slice(0, moment) };
    return rankingOf(compiled, { facts: seen, prior, ...posteriorOf(prior, logEvidenceGivenRoot) });
  };
  for (let at = 0; at < from; at += 1) take(at);
  const rankings: [CauseRanking, ...CauseRanking[]] = [rank(from)];
  for (let at = from; at < observations.length; at += 1) {
    take(at);
    rankings.push(rank(at + 1));
  }
  return rankings;
}
