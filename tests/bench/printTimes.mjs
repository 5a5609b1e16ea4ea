/** Prints times as milliseconds and as ratios to the first of them. @param {string} where @param {Record<string, number[]>} times */
export function printTimes(where, times) {
  const at = (/** @type {number[]} */ values, /** @type {number} */ share) =>
    values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? NaN;
  const baseline = at(Object.values(times)[0] ?? [], 0.5);
  console.log(`${where}, ${Object.values(times)[0]?.length} rounds`);
  for (const [name, taken] of Object.entries(times)) {
    const [median, ninetyFive, slowest] = [0.5, 0.95, 1].map((share) => at(taken, share).toFixed(2));
    const ratio = (Number(median) / baseline).toFixed(1);
    console.log(`  ${name}: median ${median} ms (ratio ${ratio}), 95 % ${ninetyFive} ms, slowest ${slowest} ms`);
  }
}
