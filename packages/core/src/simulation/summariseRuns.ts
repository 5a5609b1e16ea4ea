import type { CaseRun } from './caseRun.ts';

/** What many cases under one policy came to. */
export interface RunSummary {
  readonly policy: string;
  readonly cases: number;
  readonly meanCost: number;
  /** Standard error of `meanCost`. */
  readonly standardError: number;
  readonly medianCost: number;
  readonly ninetiethPercentileCost: number;
  readonly needlessOpeningsPerCase: number;
  readonly wrongRepairsPerCase: number;
  readonly stepsPerCase: number;
  readonly referredShare: number;
}

/** One summary per policy, in the order in which policies first appear. */
export function summariseRuns(runs: readonly CaseRun[]): readonly RunSummary[] {
  return [...group(runs)].map(([policy, rows]): RunSummary => {
    const cases = rows.length;
    const mean = (of: (run: CaseRun) => number): number => rows.reduce((sum, run) => sum + of(run), 0) / cases;
    const meanCost = mean(({ cost }) => cost);
    const variance = cases > 1 ? rows.reduce((sum, { cost }) => sum + (cost - meanCost) ** 2, 0) / (cases - 1) : 0;
    const sorted = rows.map(({ cost }) => cost).sort((a, b) => a - b);
    const percentile = (share: number): number => sorted[Math.max(0, Math.ceil(share * cases) - 1)]!;
    return {
      policy,
      cases,
      meanCost,
      standardError: Math.sqrt(variance / cases),
      medianCost: percentile(0.5),
      ninetiethPercentileCost: percentile(0.9),
      needlessOpeningsPerCase: mean((run) => run.needlessOpenings),
      wrongRepairsPerCase: mean((run) => run.wrongRepairs),
      stepsPerCase: mean((run) => run.steps),
      referredShare: mean((run) => Number(run.end === 'referred')),
    };
  });
}

function group(runs: readonly CaseRun[]): Map<string, CaseRun[]> {
  const groups = new Map<string, CaseRun[]>();
  for (const run of runs) {
    const rows = groups.get(run.policy);
    if (rows === undefined) groups.set(run.policy, [run]);
    else rows.push(run);
  }
  return groups;
}
