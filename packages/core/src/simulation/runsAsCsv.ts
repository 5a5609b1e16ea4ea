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

/** Simulated cases as comma-separated values with a header line (RFC 4180; ids contain no commas).
 * @example
 * ```ts
 * const { policy } = boundedSearch.solve(problem);
 * const runs = [...simulate({ policy: 'search', prepare: () => ({ problem, decide: policy }), cases: 1, seed: 1 })];
 * runsAsCsv(runs).split('\r\n').slice(0, 1) // ['policy,number,truth,trueCause,cost,minutes,steps,tests,wrongRepairs,needlessOpenings,end']
 * runsAsCsv(runs).split('\r\n').slice(1, 2) // ['search,0,as-believed,cause-1,120,0,2,1,0,0,cured']
 * ``` */
export function runsAsCsv(runs: readonly CaseRun[]): string {
  const lines = runs.map((run) => COLUMNS.map((column) => run[column]).join(','));
  return `${[COLUMNS.join(','), ...lines].join('\r\n')}\r\n`;
}
