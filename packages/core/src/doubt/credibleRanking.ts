import { checkOptions } from '../validation/checkOptions.ts';
import { rankCauses } from '../belief/rankCauses.ts';
import { testAsked } from '../evidence/testAsked.ts';
import type { Facts } from '../evidence/facts.ts';
import { sweepFacts } from '../belief/sweepFacts.ts';
import { createRandom } from '../distributions/random.ts';
import { recompileModel } from '../compiled/compileModel.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { runToEnd } from '../turns/runToEnd.ts';
import type { Turns } from '../turns/turns.ts';
import { doubtOptionsSchema, type DoubtOptions } from './doubtOptions.ts';
import { drawModel } from './drawModel.ts';

/** How sure the posterior of one cause is, given how few cases the model's numbers are worth. */
export interface CredibleCause {
  readonly cause: string;
  /** At the best estimates. */
  readonly probability: number;
  /** 5 %, 50 % and 95 % points over plausible models. */
  readonly low: number;
  readonly median: number;
  readonly high: number;
  /** Share of plausible models in which it leads. */
  readonly leads: number;
}

/** The ranking with its doubt. */
export interface CredibleRanking {
  /** In the order of the ranking at the best estimates. */
  readonly causes: readonly CredibleCause[];
  readonly draws: number;
  readonly seed: number;
}

/** Credible interval of every posterior: the same facts under models drawn from the Dirichlet, Beta and log-normal uncertainty of all
 * numbers that the ranking depends on (see `drawModel`).
 * @throws EvidenceError as `rankCauses` does @throws OptionError
 * @example
 * ```ts
 * const [leader] = credibleRanking(pump, { context: {}, observations: [] }, { draws: 8 }).causes;
 * leader?.cause; // 'fuse-blown'
 * [leader?.low, leader?.median, leader?.high]; // [0.2178, 0.447, 0.654]
 * ``` */
export function credibleRanking(compiled: CompiledModel, facts: Facts, options: DoubtOptions = {}): CredibleRanking {
  return runToEnd(credibleRankingInTurns(compiled, facts, options));
}

/** The same, giving way after every draw: aborted then, it answers from the draws it has.
 * @throws EvidenceError with the first turn @throws OptionError at once
 * @example
 * ```ts
 * const turns = credibleRankingInTurns(pump, { context: {}, observations: [] }, { draws: 4 });
 * (await runInTurns(turns, { pause: () => Promise.resolve() })).draws; // 4
 * ``` */
export function credibleRankingInTurns(
  compiled: CompiledModel,
  facts: Facts,
  options: DoubtOptions = {},
): Turns<CredibleRanking> {
  checkOptions(doubtOptionsSchema, options);
  return rankingTurns(compiled, facts, options);
}

function* rankingTurns(compiled: CompiledModel, facts: Facts, options: DoubtOptions): Turns<CredibleRanking> {
  const { draws: wanted = 2000, seed = 1, signal } = options;
  const { ranking } = rankCauses(compiled, facts);
  const tests = new Set(facts.observations.map((observation) => testAsked(compiled, observation)));
  const contextValues = new Set(Object.entries(facts.context).map(([feature, value]) => `${feature}:${value}`));
  const random = createRandom(seed);
  const posteriors: Float64Array[] = [];
  while (posteriors.length < wanted && !(signal?.aborted === true && posteriors.length > 0)) {
    const drawn = recompileModel(compiled, drawModel(compiled.model, random, { tests, contextValues }));
    posteriors.push(sweepFacts(drawn, facts, { posteriorOnly: true }).posterior);
    yield;
  }
  const leaders = posteriors.map((posterior) => posterior.indexOf(posterior.reduce((a, b) => Math.max(a, b))));
  const causes = ranking.map(({ cause, probability }): CredibleCause => {
    const at = compiled.causeIndex.get(cause)!;
    const sorted = Float64Array.from(posteriors, (posterior) => posterior[at]!).sort();
    return {
      cause,
      probability,
      low: quantile(sorted, 0.05),
      median: quantile(sorted, 0.5),
      high: quantile(sorted, 0.95),
      leads: leaders.filter((leader) => leader === at).length / leaders.length,
    };
  });
  return { causes, draws: posteriors.length, seed };
}

/** Linear interpolation between order statistics (Hyndman & Fan 1996, type 7). */
function quantile(sorted: Float64Array, p: number): number {
  const at = p * (sorted.length - 1);
  const below = Math.floor(at);
  const lower = sorted[below]!;
  return lower + (at - below) * ((sorted[below + 1] ?? lower) - lower);
}
