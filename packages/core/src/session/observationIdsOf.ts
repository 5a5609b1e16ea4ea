import { observationIdOf } from './observationIdOf.ts';
import type { SessionContent } from './session.ts';

/** The ids of all observations a case ever had, retracted and unplaced ones included. */
export function observationIdsOf({ events, unplaced }: Pick<SessionContent, 'events' | 'unplaced'>): Set<string> {
  const all = [...events, ...unplaced.map(({ event }) => event)];
  return new Set(all.flatMap((event) => observationIdOf(event) ?? []));
}
