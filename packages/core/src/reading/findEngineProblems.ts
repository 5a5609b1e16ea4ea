import { problemFor } from '../validation/problemFor.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import type { Engine } from './engine.ts';
import type { Reading } from './reading.ts';

/** What in a reading does not fit the engine it was read on, each at its field: another suspect, cylinders this engine has not. Readings
 * of one cylinder alone fit every engine.
 * @param path JSON Pointer of the reading, `''` when it stands alone. */
export function findEngineProblems({ cylinders, suspect }: Engine, reading: Reading, path = ''): Problem[] {
  if (reading.kind !== 'per-cylinder' && reading.kind !== 'counts') return [];
  const parts: (readonly [string, object])[] =
    reading.kind === 'counts'
      ? [['/counts', reading.counts]]
      : [
          ['/values', reading.values],
          ['/temperatures/values', reading.temperatures?.values ?? {}],
        ];
  const beyond = parts.flatMap(([part, byCylinder]) =>
    Object.keys(byCylinder)
      .filter((cylinder) => Number(cylinder) > cylinders)
      .map((cylinder) => problemFor('cylinder-unknown', `${path}${part}/${cylinder}`, { cylinder, cylinders })),
  );
  if (reading.suspect === suspect) return beyond;
  return [problemFor('suspect-differs', `${path}/suspect`, { read: reading.suspect, suspect }), ...beyond];
}
