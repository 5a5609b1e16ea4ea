import { caseState, type Session } from '@faultodds/core';
import type { Suspect } from './askSuspect.ts';

/** The misfiring cylinder as the readings of a case name it; the number of cylinders is the highest that was read. */
export function suspectOf(session: Session): Suspect | undefined {
  for (const observation of caseState(session).observations.toReversed()) {
    const reading = observation.kind === 'result' ? observation.reading : undefined;
    if (reading?.kind !== 'per-cylinder' && reading?.kind !== 'counts') continue;
    const read = Object.keys(reading.kind === 'counts' ? reading.counts : reading.values).map(Number);
    return { cylinder: reading.suspect, of: Math.max(reading.suspect, ...read) };
  }
  return undefined;
}
