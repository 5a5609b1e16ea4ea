import { editDistance } from './editDistance.ts';

/** The known id that is near enough to be meant, if any.
 * @example nearestId('coil-weeak', ['coil-weak', 'plug-worn']) // 'coil-weak' */
export function nearestId(id: string, among: Iterable<string>): string | undefined {
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
