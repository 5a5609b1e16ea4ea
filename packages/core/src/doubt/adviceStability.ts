import { checkOptions } from '../validation/checkOptions.ts';
import type { Facts } from '../evidence/facts.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import type { Advice } from '../advice/advice.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import { advise } from '../advice/advise.ts';
import { createRandom } from '../distributions/random.ts';
import { recompileModel } from '../compiled/compileModel.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { runToEnd } from '../turns/runToEnd.ts';
import type { Turns } from '../turns/turns.ts';
import { doubtOptionsSchema, type DoubtOptions } from './doubtOptions.ts';
import { drawModel } from './drawModel.ts';
import { sameStep } from './sameStep.ts';
import { stepKey } from './stepKey.ts';

/** How stable the advice is: the share of plausible models that give the same one. */
export interface AdviceStability {
  readonly best: Advice['best'];
  /** Share of draws with the same best step. */
  readonly share: number;
  /** What the other draws would do, most frequent first. */
  readonly others: readonly { readonly best: Advice['best']; readonly share: number }[];
  readonly draws: number;
  readonly seed: number;
}

/** The share of plausible models that give the same advice. Every draw prices every test: about a hundred times dearer per draw than
 * `credibleRanking`. Default 200 draws.
 * @throws EvidenceError as `beliefOf` and `advise` do @throws OptionError
 * @example
 * ```ts
 * const { best, share } = adviceStability(pump, { context: {}, observations: [] }, {}, { draws: 8 });
 * best.kind; // 'test'
 * share; // 0.875
 * ``` */
export function adviceStability(
  compiled: CompiledModel,
  facts: Facts,
  circumstances: Circumstances = {},
  options: DoubtOptions = {},
): AdviceStability {
  return runToEnd(adviceStabilityInTurns(compiled, facts, circumstances, options));
}

/** The same, giving way after every draw: aborted then, it answers from the draws it has.
 * @throws EvidenceError with the first turn @throws OptionError at once
 * @example
 * ```ts
 * const turns = adviceStabilityInTurns(pump, { context: {}, observations: [] }, {}, { draws: 4 });
 * (await runInTurns(turns, { pause: () => Promise.resolve() })).draws; // 4
 * ``` */
export function adviceStabilityInTurns(
  compiled: CompiledModel,
  facts: Facts,
  circumstances: Circumstances = {},
  options: DoubtOptions = {},
): Turns<AdviceStability> {
  checkOptions(doubtOptionsSchema, options);
  return adviceTurns(compiled, facts, circumstances, options);
}

function* adviceTurns(
  compiled: CompiledModel,
  facts: Facts,
  circumstances: Circumstances,
  options: DoubtOptions,
): Turns<AdviceStability> {
  const { draws: wanted = 200, seed = 1, signal } = options;
  const { best } = advise(compiled, beliefOf(compiled, facts), circumstances);
  const random = createRandom(seed);
  const counts = new Map<string, { best: Advice['best']; count: number }>();
  let draws = 0;
  while (draws < wanted && !(signal?.aborted === true && draws > 0)) {
    const drawn = recompileModel(compiled, drawModel(compiled.model, random));
    const advised = advise(drawn, beliefOf(drawn, facts), circumstances).best;
    const key = stepKey(advised);
    const known = counts.get(key) ?? { best: advised, count: 0 };
    counts.set(key, { ...known, count: known.count + 1 });
    draws += 1;
    yield;
  }
  const shares = [...counts.values()].map((entry) => ({ best: entry.best, share: entry.count / draws }));
  return {
    best,
    share: shares.find((entry) => sameStep(entry.best, best))?.share ?? 0,
    others: shares.filter((entry) => !sameStep(entry.best, best)).sort((a, b) => b.share - a.share),
    draws,
    seed,
  };
}
