import { studentQuantile } from '../distributions/studentQuantile.ts';
import type { CaseRun } from './caseRun.ts';

/** What many cases under one policy came to. */
export interface RunSummary {
  readonly policy: string;
  readonly cases: number;
  readonly meanCost: number;
  /** Standard error of `meanCost`. */
  readonly standardError: number;
  /** 95 % confidence interval of the mean (Student's t; Gosset 1908); the mean itself for a single case. */
  readonly meanLow: number;
  readonly meanHigh: number;
  readonly medianCost: number;
  readonly ninetiethPercentileCost: number;
  readonly needlessOpeningsPerCase: number;
  readonly wrongRepairsPerCase: number;
  readonly stepsPerCase: number;
  readonly referredShare: number;
}

/** One summary per policy, in the order in which policies first appear.
 * @example
 * ```ts
 * const { policy } = boundedSearch.solve(problem);
 * const runs = [...simulate({ policy: 'search', prepare: () => ({ problem, decide: policy }), cases: 3, seed: 1 })];
 * const [summary] = summariseRuns(runs);
 * summary?.meanCost // 110
 * summary?.medianCost // 120
 * ``` */
export function summariseRuns(runs: readonly CaseRun[]): readonly RunSummary[] {
  return [...group(runs)].map(([policy, rows]): RunSummary => {
    const cases = rows.length;
    const mean = (of: (run: CaseRun) => number): number => rows.reduce((sum, run) => sum + of(run), 0) / cases;
    const meanCost = mean(({ cost }) => cost);
    const variance = cases > 1 ? rows.reduce((sum, { cost }) => sum + (cost - meanCost) ** 2, 0) / (cases - 1) : 0;
    const sorted = rows.map(({ cost }) => cost).sort((a, b) => a - b);
    const percentile = (share: number): number => sorted[Math.max(0, Math.ceil(share * cases) - 1)]!;
    const standardError = Math.sqrt(variance / cases);
    const reach = cases > 1 ? studentQuantile(0.975, cases - 1) * standardError : 0;
    return {
      policy,
      cases,
      meanCost,
      standardError,
      meanLow: meanCost - reach,
      meanHigh: meanCost + reach,
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
