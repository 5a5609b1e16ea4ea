import { editDistance } from '@faultodds/core';

/** The known name that was probably meant: one that begins alike or differs by a slip or two. */
export function closestName(given: string, known: Iterable<string>): string | undefined {
  const plain = (name: string): string => name.toLowerCase().replaceAll(/[^a-z0-9]|0+(?=\d)/g, '');
  let best: string | undefined;
  let least = 3;
  for (const name of known) {
    const slips = editDistance(plain(given), plain(name));
    if (slips < least) [best, least] = [name, slips];
  }
  return best;
}
