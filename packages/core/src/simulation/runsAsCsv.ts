import type { CaseRun } from './caseRun.ts';

const COLUMNS = [
  'policy',
  'number',
  'truth',
  'trueCause',
  'cost',
  'minutes',
  'steps',
  'tests',
  'wrongRepairs',
  'needlessOpenings',
  'end',
] as const satisfies readonly (keyof CaseRun)[];

/** Simulated cases as comma-separated values with a header line (RFC 4180; ids contain no commas). */
export function runsAsCsv(runs: readonly CaseRun[]): string {
  const lines = runs.map((run) => COLUMNS.map((column) => run[column]).join(','));
  return `${[COLUMNS.join(','), ...lines].join('\r\n')}\r\n`;
}
