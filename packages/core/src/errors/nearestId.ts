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

/** Levenshtein distance, O(length x length). */
function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 0; i < a.length; i += 1) {
    const row = [i + 1];
    for (let j = 0; j < b.length; j += 1) {
      row.push(Math.min(previous[j + 1]! + 1, row[j]! + 1, previous[j]! + Number(a[i] !== b[j])));
    }
    previous = row;
  }
  return previous[b.length]!;
}
