import * as z from 'zod/mini';
import type { Belief } from '../belief/belief.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import { runToEnd } from '../turns/runToEnd.ts';
import type { Turns } from '../turns/turns.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { createAdviceSearch, type AdviceSearch, type SettleOptions } from './createAdviceSearch.ts';
import type { SettledAdvice } from './settledAdvice.ts';

const optionsSchema = z.strictObject({
  steps: z.optional(optionSchemas.budget(0)),
  signal: z.optional(optionSchemas.signal),
});

/** What to do next, looking several steps ahead: the one-step answer of `advise`, and a bounded search from there with the bound of perfect
 * information, as `replanning` does after every result. One step stops testing too early; where it says to repair or to hand the case on
 * the search looks longest.
 *
 * Every other step carries what beginning with it costs more. That is the difference of two plans that exist, each as good as the search
 * found it: a step that was looked at less may cost less than it seems, and `isAboutTheSame` says where that could make it as good.
 * @throws EvidenceError as `advise` does @throws OptionError
 * @example
 * ```ts
 * const intake = beliefOf(pump, { context: {}, observations: [] });
 * const { best, expectedCost, others } = settleAdvice(pump, intake);
 * best.kind; // 'test'
 * expectedCost.amount; // 116.38
 * others.length; // 8
 * ```
 * Source: see `boundedSearch`; rollout, Bertsekas & Castanon 1999, Journal of Heuristics 5:89-108, is its first step. */
export function settleAdvice(
  compiled: CompiledModel,
  belief: Belief,
  circumstances: Circumstances = {},
  options: SettleOptions = {},
): SettledAdvice {
  return runToEnd(settleAdviceInTurns(compiled, belief, circumstances, options));
}

/** The same, giving way after every few actions looked at: aborted then, it answers from what it has.
 * @throws EvidenceError @throws OptionError at once
 * @example
 * ```ts
 * const turns = settleAdviceInTurns(pump, beliefOf(pump, { context: {}, observations: [] }), {}, { steps: 3 });
 * (await runInTurns(turns, { pause: () => Promise.resolve() })).steps; // 3
 * ``` */
export function settleAdviceInTurns(
  compiled: CompiledModel,
  belief: Belief,
  circumstances: Circumstances = {},
  options: SettleOptions = {},
): Turns<SettledAdvice, SettledAdvice> {
  checkOptions(optionsSchema, options);
  return createAdviceSearch(compiled, belief, circumstances).go(options);
}

/** A search for settled advice that can be stopped and asked again: `inTurns` with more steps goes on from what it has examined, and with as
 * many answers at once. `advice` is the one-step answer it begins with.
 * @throws EvidenceError as `advise` does
 * @example
 * ```ts
 * const search = beginSettling(pump, beliefOf(pump, { context: {}, observations: [] }));
 * search.advice.best.kind; // 'test'
 * [3, 6].map((steps) => runToEnd(search.inTurns({ steps })).steps); // [3, 6]
 * ``` */
export function beginSettling(
  compiled: CompiledModel,
  belief: Belief,
  circumstances: Circumstances = {},
): { readonly advice: AdviceSearch['advice']; readonly inTurns: AdviceSearch['go'] } {
  const { advice, go } = createAdviceSearch(compiled, belief, circumstances);
  return {
    advice,
    inTurns: (options) => {
      checkOptions(optionsSchema, options);
      return go(options);
    },
  };
}
