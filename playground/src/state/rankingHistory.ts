import type { Belief, Facts } from '@faultodds/core';
import { type MomentRanking, type ObservationMove, explainMove, rankAfterEach } from '@faultodds/core/explanation';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** How the ranking came about: where it stood after the intake facts and after each observation. */
export interface RankingHistory {
  readonly facts: Facts;
  /** One more than observations; the last one is the ranking now. */
  readonly moments: readonly MomentRanking[];
}

/** Moments worked out on the page itself at most; more are left to the worker. */
const AT_ONCE = 16;

/** The history to a belief. What an earlier history shares with it is taken over; one result more costs nothing.
 * @returns null when too much would have to be worked out at once: ask `followHistory` elsewhere. */
export function extendHistory(
  { compiled }: Knowledge,
  belief: Belief,
  earlier: RankingHistory | null,
): RankingHistory | null {
  const { facts } = belief;
  const last = facts.observations.length;
  const known = Math.min(last, sharedMoments(earlier, facts));
  const moments = earlier?.moments.slice(0, known) ?? [];
  if (last - known > AT_ONCE) return null;
  if (known < last) moments.push(...rankAfterEach(compiled, facts, { from: known }).slice(0, last - known));
  return { facts, moments: [...moments, belief] };
}

/** What the observation at a position did. Worked out when first asked for, then kept with its moment. */
export function moveAt({ facts, moments }: RankingHistory, at: number): ObservationMove | undefined {
  const [observation, earlier, later] = [facts.observations[at], moments[at], moments[at + 1]];
  if (observation === undefined || earlier === undefined || later === undefined) return undefined;
  const known = moveTo.get(later);
  if (known?.earlier === earlier && known.move.observation === observation) return known.move;
  const move = explainMove(observation, earlier, later);
  moveTo.set(later, { earlier, move });
  return move;
}

const moveTo = new WeakMap<MomentRanking, { readonly earlier: MomentRanking; readonly move: ObservationMove }>();

/** How many moments of a history hold for other facts too. Observations are compared by identity: a session never copies them. */
export function sharedMoments(history: RankingHistory | null, { context, observations }: Facts): number {
  if (history === null) return 0;
  const { facts, moments } = history;
  const [ours, theirs] = [Object.entries(context), facts.context];
  if (ours.length !== Object.keys(theirs).length || ours.some(([feature, value]) => theirs[feature] !== value))
    return 0;
  const differs = observations.findIndex((observation, at) => facts.observations[at] !== observation);
  return Math.min(moments.length, (differs < 0 ? observations.length : differs) + 1);
}
