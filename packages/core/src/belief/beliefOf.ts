import { atLeastOne } from '../errors/atLeastOne.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Belief } from './belief.ts';
import type { Facts } from '../evidence/facts.ts';
import { findBeliefProblems } from './findBeliefProblems.ts';
import { findWarnings } from './findWarnings.ts';
import { rankingOf } from './rankCauses.ts';
import { sweepFacts, type SweptFacts } from './sweepFacts.ts';

// The arrays behind a belief, so that questions asked of it do not sweep again. A belief from elsewhere (a worker, a file) is swept anew.
const sweptOf = new WeakMap<Belief, { readonly compiled: CompiledModel; readonly swept: SweptFacts }>();

/** Exact belief over causes given intake facts and observations, and what every test would show now; the order of observations does
 * not matter.
 * @throws EvidenceError unknown or inapplicable ids, malformed likelihoods, or evidence that no cause can produce.
 * @example
 * ```ts
 * const seen = beliefOf(pump, { context: {}, observations: [{ kind: 'result', id: 'one', test: 'fuse-look', outcome: 'blown' }] });
 * seen.ranking[0]; // { cause: 'fuse-blown', probability: 0.9706, prior: 0.4 }
 * seen.predictive.hum; // { hums: 0.1814, silent: 0.8186 }
 * ``` */
export function beliefOf(compiled: CompiledModel, facts: Facts): Belief {
  const swept = sweepFacts(compiled, facts);
  const belief: Belief = {
    ...rankingOf(compiled, swept),
    predictive: Object.fromEntries(
      swept.tests.map(({ test, outcomes }) => [test.id, predictive(outcomes, test.id, swept)]),
    ),
    warnings: findWarnings(compiled, facts),
  };
  sweptOf.set(belief, { compiled, swept });
  return belief;
}

/** The arrays behind a belief of this model; made anew when the belief came from elsewhere.
 * @throws EvidenceError `belief-of-another-model`, or numbers that are no probabilities */
export function sweptFactsOf(compiled: CompiledModel, belief: Belief): SweptFacts {
  const known = sweptOf.get(belief);
  if (known?.compiled === compiled) return known.swept;
  const problems = findBeliefProblems(compiled, belief);
  if (atLeastOne(problems)) throw new EvidenceError(problems);
  return sweepFacts(compiled, belief.facts);
}

function predictive(
  outcomes: readonly string[],
  test: string,
  { posterior, outcomeGivenCause }: SweptFacts,
): Record<string, number> {
  const table = outcomeGivenCause.get(test);
  const sums = new Float64Array(outcomes.length);
  posterior.forEach((p, c) => {
    for (let o = 0; o < sums.length; o += 1) sums[o]! += p * (table?.[c * sums.length + o] ?? 0);
  });
  return Object.fromEntries(outcomes.map((outcome, o) => [outcome, sums[o]!]));
}
