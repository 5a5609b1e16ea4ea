/** The known name that was probably meant: one that begins alike or differs by a slip or two. */
export function closestName(given: string, known: Iterable<string>): string | undefined {
  const plain = (name: string): string => name.toLowerCase().replaceAll(/[^a-z0-9]|0+(?=\d)/g, '');
  let best: string | undefined;
  let least = 3;
  for (const name of known) {
    const slips = slipsBetween(plain(given), plain(name));
    if (slips < least) [best, least] = [name, slips];
  }
  return best;
}

/** Edit distance (Levenshtein). */
function slipsBetween(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (const [i, letter] of [...a].entries()) {
    const next = [i + 1];
    for (const [j, other] of [...b].entries()) {
      next.push(Math.min((row[j] ?? 0) + (letter === other ? 0 : 1), (row[j + 1] ?? 0) + 1, (next[j] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
