import type { Model } from '../model/model.ts';
import type { Observation } from './observation.ts';

/** The repairs, by id, that an observation shows to have cured or not: the one that was tried, or those that a test is the same as (a part
 * renewed, and the misfire gone or still there). A result while the fault slept shows neither. */
export function triedBy({ repairs }: Model, observation: Observation, cured: boolean): readonly string[] {
  if (observation.kind === 'repair-tried') return observation.cured === cured ? [observation.repair] : [];
  const { test, outcome, faultActive } = observation;
  if (faultActive === 'no') return [];
  return repairs.flatMap(({ id, sameAs }) =>
    sameAs?.test === test && outcome === (cured ? sameAs.cured : sameAs.notCured) ? [id] : [],
  );
}
