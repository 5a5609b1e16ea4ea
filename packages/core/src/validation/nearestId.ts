import { problemParts } from '../words/languages/en/problems/problemParts.ts';
import { editDistance } from './editDistance.ts';

/** Hint for an id that does not resolve: the nearest known one when it is near enough to be a slip of the pen.
 * @example nearestId('coil-weeak', ['coil-weak', 'plug-worn']) // "did you mean 'coil-weak'?" */
export function nearestId(id: string, among: Iterable<string>): string {
  return problemParts.nearest(nearestOf(id, among));
}

/** The known id that is near enough to be meant, if any. */
export function nearestOf(id: string, among: Iterable<string>): string | undefined {
  const limit = Math.max(2, Math.floor(id.length / 3));
  let best: string | undefined;
  let least = limit + 1;
  for (const other of among) {
    if (Math.abs(id.length - other.length) >= least) continue; // no fewer slips than letters too many
    const distance = editDistance(id, other);
    if (distance < least) [best, least] = [other, distance];
  }
  return best;
}
