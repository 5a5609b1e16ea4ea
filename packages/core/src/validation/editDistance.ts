/** Slips between two words: insertions, deletions and replacements (Levenshtein 1966). O(length x length).
 * @example editDistance('coil', 'oils') // 2 */
export function editDistance(a: string, b: string): number {
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
