/** The sign of a hazard and the numbers of its cautions in the legend, neighbours as a range: `⚠ 1–3, 7`; nothing where there are none.
 * @param all the cautions of the plan, by their number from 1. */
export function hazardMark(cautions: readonly string[], all: readonly string[]): string {
  const numbers = cautions.map((id) => all.indexOf(id) + 1).sort((a, b) => a - b);
  const runs = numbers.reduce<[number, number][]>((ranges, number) => {
    const last = ranges.at(-1);
    if (last?.[1] === number - 1) last[1] = number;
    else ranges.push([number, number]);
    return ranges;
  }, []);
  if (runs.length === 0) return '';
  return `⚠ ${runs.map(([from, to]) => (from === to ? String(from) : `${from}–${to}`)).join(', ')}`;
}
