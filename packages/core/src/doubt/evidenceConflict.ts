import type { Facts } from '../evidence/facts.ts';
import type { Observation } from '../evidence/observation.ts';
import { sweepFacts } from '../belief/sweepFacts.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';

/** How badly results fit together. Logarithms to base 2; positive means that they disagree under this model. */
export interface EvidenceConflict {
  /** conf(e) = log2 of the product of P(e_i) over P(e): 0 for independent results, negative when they support each other. */
  readonly totalBits: number;
  /** Per observation: conf of this one against all others together, log2 of P(e_i) P(rest) over P(e). */
  readonly items: readonly { readonly observation: Observation; readonly bits: number }[];
  /** The observation without which the total falls most, when that leaves less conflict. */
  readonly helpsMost?: { readonly observation: Observation; readonly totalBitsWithout: number };
  /** Pairs of observations that disagree by at least one bit, worst first. */
  readonly pairs: readonly { readonly a: Observation; readonly b: Observation; readonly bits: number }[];
}

// One bit: seen together half as often as if they had nothing to do with each other.
const PAIR_BITS = 1;

/** Conflict among the results of a case: in total, per result, per pair, and whose removal helps most. Conflict may mean a mistaken
 * result, a rare but consistent fault, or a cause that is not listed. O(n^2) posterior sweeps.
 * @throws EvidenceError as `rankCauses` does.
 * @example
 * ```ts
 * const conflict = evidenceConflict(pump, {
 *   context: {},
 *   observations: [
 *     { kind: 'result', id: 'one', test: 'fuse-look', outcome: 'blown' },
 *     { kind: 'result', id: 'two', test: 'hum', outcome: 'hums' },
 *   ],
 * });
 * conflict.totalBits; // 1.4604
 * conflict.pairs.map(({ a, b }) => [a.id, b.id]); // [['one', 'two']]
 * ```
 * Source: Jensen, Chamberlain, Nordahl & Jensen 1990 (UAI 6); Jensen & Nielsen 2007, Bayesian Networks and Decision Graphs. */
export function evidenceConflict(compiled: CompiledModel, facts: Facts): EvidenceConflict {
  // looks at the facts first
  const together = sweepFacts(compiled, facts, { posteriorOnly: true }).logProbabilityOfEvidence;
  const { context, observations } = facts;
  const logP = (kept: readonly Observation[]): number =>
    kept.length === 0
      ? 0
      : sweepFacts(compiled, { context, observations: kept }, { posteriorOnly: true }).logProbabilityOfEvidence;
  const bits = (nats: number): number => nats / Math.LN2;

  const alone = observations.map((observation) => logP([observation]));
  const all = observations.length === 0 ? 0 : together;
  const sumAlone = alone.reduce((sum, x) => sum + x, 0);
  const totalBits = bits(sumAlone - all);
  const withoutEach = observations.map((_, at) => logP(observations.toSpliced(at, 1)));

  const items = observations.map((observation, at) => ({
    observation,
    bits: bits(alone[at]! + withoutEach[at]! - all),
  }));
  const pairs = observations
    .flatMap((a, i) =>
      observations.slice(i + 1).map((b, offset) => ({
        a,
        b,
        bits: bits(alone[i]! + alone[i + 1 + offset]! - logP([a, b])),
      })),
    )
    .filter((pair) => pair.bits >= PAIR_BITS)
    .sort((x, y) => y.bits - x.bits);

  let best = { at: -1, bits: totalBits };
  observations.forEach((_, at) => {
    const left = bits(sumAlone - alone[at]! - withoutEach[at]!);
    if (left < best.bits) best = { at, bits: left };
  });
  const helps = observations[best.at];
  return {
    totalBits,
    items,
    pairs,
    ...(helps === undefined || totalBits <= 0
      ? {}
      : { helpsMost: { observation: helps, totalBitsWithout: best.bits } }),
  };
}
