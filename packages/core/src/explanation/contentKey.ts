import type { Observation } from '../evidence/observation.ts';

/** What an observation says as text, without its name and remark: equal for observations that say the same. */
export function contentKey(observation: Observation): string {
  const { id: _id, note: _note, ...said } = observation;
  return JSON.stringify(said);
}
