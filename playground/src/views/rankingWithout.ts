import { type Facts, type RankedCause, rankCauses } from '@faultodds/core';
import type { Knowledge } from '../knowledge/knowledge.ts';

const known = new WeakMap<Facts, Map<string, readonly RankedCause[]>>();

/** The ranking now with one observation left out and all others kept. Asked only for the one that is looked at, and once. */
export function rankingWithout({ compiled }: Knowledge, facts: Facts, id: string): readonly RankedCause[] {
  const made = known.get(facts) ?? new Map<string, readonly RankedCause[]>();
  known.set(facts, made);
  const observations = facts.observations.filter((one) => one.id !== id);
  const ranking = made.get(id) ?? rankCauses(compiled, { ...facts, observations }).ranking;
  made.set(id, ranking);
  return ranking;
}
