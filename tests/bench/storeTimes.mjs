import { writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';

/** @param {number[]} values @param {number} share */
const at = (values, share) =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? NaN;

/** Prints times as milliseconds and as ratios to the first of them, the baseline, and stores them under tests/bench/results.
 * @param {string} file its name @param {Record<string, Record<string, number[]>>} places what was timed, by where */
export function storeTimes(file, places) {
  const load = Number(loadavg()[0]?.toFixed(1));
  console.log(`load of the machine: ${load}`);
  const stored = Object.entries(places).map(([where, times]) => {
    const baseline = at(Object.values(times)[0] ?? [], 0.5);
    console.log(`${where}, ${Object.values(times)[0]?.length} rounds`);
    const rows = Object.entries(times).map(([what, taken]) => {
      const [median, ninetyFive, slowest] = [0.5, 0.95, 1].map((share) => at(taken, share));
      const row = { median, ninetyFive, slowest, ratio: Number(median) / baseline };
      const shown = Object.values(row).map((value) => Number(value).toFixed(2));
      console.log(`  ${what}: median ${shown[0]} ms (ratio ${shown[3]}), 95 % ${shown[1]} ms, slowest ${shown[2]} ms`);
      return [what, row];
    });
    return [where, { rounds: Object.values(times)[0]?.length, milliseconds: Object.fromEntries(rows) }];
  });
  const machine = { cpu: cpus()[0]?.model, cores: cpus().length, load, node: process.version };
  const text = JSON.stringify({ machine, ...Object.fromEntries(stored) }, undefined, 2);
  writeFileSync(new URL(`results/${file}.json`, import.meta.url), `${text}\n`);
}
