import type { Belief, Observation, RankedCause } from '@faultodds/core';
import type { EvidenceConflict } from '@faultodds/core/doubt';
import { shortChance } from '../words/shortChance.ts';
import { t } from '../words/t.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import { rankingWithout } from './rankingWithout.ts';

/** Results that disagree, in words. */
export interface ConflictView {
  readonly pairs: readonly string[];
  /** Exact figures, one line each. */
  readonly exact: readonly string[];
  /** The result without which the rest fits best; null when taking one away helps nothing. */
  readonly helps: {
    readonly id: string;
    readonly what: string;
    readonly rows: readonly { readonly label: string; readonly with: string; readonly without: string }[];
  } | null;
}

/** Beyond this the results together are worth a look: half as likely as if they had nothing to do with each other. */
const NOTABLE_BITS = 1;
const SHOWN = 4;

/** What to say about results that disagree; null when they do not. */
export function conflictView(
  knowledge: Knowledge,
  { facts, ranking }: Belief,
  conflict: EvidenceConflict | undefined,
): ConflictView | null {
  if (conflict === undefined || !(conflict.totalBits > NOTABLE_BITS || conflict.pairs.length > 0)) return null;
  const name = (observation: Observation): string => {
    const { what, outcome } = knowledge.observed(observation);
    return t.rankShift.short(what, outcome);
  };
  const { pairs, totalBits, helpsMost } = conflict;
  const isThere = facts.observations.some(({ id }) => id === helpsMost?.observation.id);
  const without = helpsMost && isThere ? rankingWithout(knowledge, facts, helpsMost.observation.id) : undefined;
  return {
    pairs: pairs.slice(0, SHOWN).map(({ a, b }) => t.doubt.pair(name(a), name(b))),
    exact: [
      t.doubt.bits(totalBits.toFixed(1)),
      ...pairs.map(({ a, b, bits }) => t.doubt.pairBits(name(a), name(b), bits.toFixed(1))),
    ],
    helps:
      helpsMost && without
        ? {
            id: helpsMost.observation.id,
            what: name(helpsMost.observation),
            rows: compared(knowledge, ranking, without),
          }
        : null,
  };
}

function compared(
  { causeLabel }: Knowledge,
  now: readonly RankedCause[],
  without: readonly RankedCause[],
): { readonly label: string; readonly with: string; readonly without: string }[] {
  const chance = (ranking: readonly RankedCause[], cause: string): string =>
    shortChance(ranking.find((one) => one.cause === cause)?.probability ?? 0);
  const leaders = new Set([...now.slice(0, SHOWN), ...without.slice(0, SHOWN)].map(({ cause }) => cause));
  return [...leaders].map((cause) => ({
    label: causeLabel(cause),
    with: chance(now, cause),
    without: chance(without, cause),
  }));
}
