import { editDistance } from '@faultodds/core';

/** The known name that was probably meant: one that begins alike or differs by a slip or two. */
export function closestName(given: string, known: Iterable<string>): string | undefined {
  const plain = (name: string): string => name.toLowerCase().replaceAll(/[^a-z0-9]|0+(?=\d)/g, '');
  let best: string | undefined;
  let least = 3;
  const meant = plain(given);
  for (const name of known) {
    const other = plain(name);
    if (Math.abs(meant.length - other.length) >= least) continue; // no fewer slips than letters too many
    const slips = editDistance(meant, other);
    if (slips < least) [best, least] = [name, slips];
  }
  return best;
}
