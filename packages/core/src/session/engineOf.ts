import type { Engine } from '../reading/engine.ts';
import { engineLimits } from '../reading/engineLimits.ts';
import type { CaseState } from './caseState.ts';

/** The engine of a case: as stated; otherwise as in its latest reading of several cylinders, which knows the suspect but not whether there
 * are more cylinders than were read. Then it is a proposal, to be confirmed. Nothing where no reading names it.
 * @example
 * ```ts
 * const values = { 1: 12.4, 2: 12.1, 3: 9.2, 4: 12.5 };
 * const reading = parseReading(compiled, 'cranking-compression', { kind: 'per-cylinder', unit: 'bar', suspect: 3, values });
 * engineOf({ observations: [{ kind: 'result', id: 'r1', test: 'cranking-compression', reading }] }) // { cylinders: 4, suspect: 3 }
 * ``` */
export function engineOf({ engine, observations }: Pick<CaseState, 'engine' | 'observations'>): Engine | undefined {
  if (engine !== undefined) return engine;
  for (const observation of observations.toReversed()) {
    const reading = observation.kind === 'result' ? observation.reading : undefined;
    if (reading?.kind !== 'per-cylinder' && reading?.kind !== 'counts') continue;
    const read = Object.keys(reading.kind === 'counts' ? reading.counts : reading.values).map(Number);
    const cylinders = Math.max(engineLimits.least, reading.suspect, ...read);
    if (cylinders <= engineLimits.most) return { cylinders, suspect: reading.suspect };
  }
  return undefined;
}
