import { problemFor } from '../validation/problemFor.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import type { Model } from './model.ts';
import type { ConditionalRow } from './row.ts';

// A table is stored in full, so its size is the product of the states it depends on. The misfire model's largest has a few thousand entries.
const LARGEST_TABLE = 1_000_000;
// Row numbers are kept as 16-bit integers.
const MOST_ROWS = 10_000;
// Open access is kept as the bits of a 32-bit integer.
const MOST_ACCESS = 31;

/** What is too large to be computed with: tables over too many states or of too many rows, more access operations than there are bits. */
export function findSizeProblems(model: Model): Problem[] {
  const found: Problem[] = [];
  const states = new Map(model.mechanisms.map((one) => [one.id, one.states.length]));
  states.set('cause', model.causes.length);
  const size = (parents: Iterable<string>, own: number): number =>
    [...parents].reduce((product, parent) => product * (states.get(parent) ?? 1), own);
  const need = (entries: number, path: string, of: string): void => {
    if (entries <= LARGEST_TABLE) return;
    found.push(problemFor('table-too-large', path, { of, entries, most: LARGEST_TABLE }));
  };
  const needRows = (rows: readonly ConditionalRow[], path: string, of: string): void => {
    if (rows.length <= MOST_ROWS) return;
    found.push(problemFor('table-too-large/rows', `${path}/rows`, { of, rows: rows.length, most: MOST_ROWS }));
  };
  model.mechanisms.forEach((one, at) => needRows(one.rows ?? [], `/mechanisms/${at}`, one.id));
  model.tests.forEach((one, at) => needRows(one.rows, `/tests/${at}`, one.id));
  model.mechanisms.forEach((one, at) =>
    need(size(new Set(one.parents), one.states.length), `/mechanisms/${at}`, one.id),
  );
  model.tests.forEach((one, at) => need(size(named(one.rows), one.outcomes.length), `/tests/${at}`, one.id));
  if (model.access.length > MOST_ACCESS) {
    found.push(problemFor('access-too-many', '/access', { count: model.access.length, most: MOST_ACCESS }));
  }
  return found;
}

function named(rows: readonly ConditionalRow[]): ReadonlySet<string> {
  return new Set(rows.flatMap((row) => Object.keys(row.when)));
}
