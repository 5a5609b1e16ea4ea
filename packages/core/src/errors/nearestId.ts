import { editDistance } from './editDistance.ts';

/** Hint for an id that does not resolve: the nearest known one when it is near enough to be a slip of the pen. */
export function nearestId(id: string, among: Iterable<string>): string {
  const limit = Math.max(2, Math.floor(id.length / 3));
  let best: string | undefined;
  let least = limit + 1;
  for (const other of among) {
    const distance = editDistance(id, other);
    if (distance < least) [best, least] = [other, distance];
  }
  return best === undefined ? 'add it, or correct the reference' : `did you mean '${best}'?`;
}
