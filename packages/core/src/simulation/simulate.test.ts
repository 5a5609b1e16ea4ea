import { describe, expect, test } from 'vitest';
import { costOfPolicy } from '../solvers/costOfPolicy.ts';
import { exactDynamicProgramming } from '../solvers/exactDynamicProgramming.ts';
import type { Solver } from '../solvers/solver.ts';
import { compileTableProblem } from '../problem/compileTableProblem.ts';
import type { ProblemTables } from '../problem/problemTables.ts';
import { makePartsSwapping } from './makePartsSwapping.ts';
import { runsAsCsv } from './runsAsCsv.ts';
import { simulate, type SimulationPlan } from './simulate.ts';
import { summariseRuns } from './summariseRuns.ts';
import { makeTruthOfProblem } from './makeTruthOfProblem.ts';

const tables: ProblemTables = {
  prior: [0.5, 0.3, 0.2],
  access: [{ cost: 30, opensEngine: true }],
  tests: [
    {
      id: 'look',
      cost: 8,
      outcomeGivenCause: [
        [0.9, 0.1],
        [0.2, 0.8],
        [0.3, 0.7],
      ],
    },
    {
      id: 'inside',
      cost: 5,
      access: 0,
      outcomeGivenCause: [
        [0.5, 0.5],
        [0.95, 0.05],
        [0.1, 0.9],
      ],
    },
  ],
  repairs: [
    { id: 'first', cost: 60, cures: [0.95, 0, 0] },
    { id: 'second', cost: 90, access: 0, cures: [0, 0.9, 0] },
    { id: 'third', cost: 140, cures: [0, 0, 0.9] },
  ],
  referralCost: [300, 330, 380],
};
const problem = compileTableProblem(tables);
const SEED = 11;
const run = (solver: Solver, cases: number, more: Partial<SimulationPlan> = {}) =>
  [
    ...simulate({
      policy: solver.id,
      prepare: () => ({ problem, decide: solver.solve(problem).policy }),
      cases,
      seed: SEED,
      ...more,
    }),
  ].sort((a, b) => a.number - b.number);

describe('simulated cases', () => {
  test('cost on average what the policy costs exactly, within four standard errors of 20,000 cases', () => {
    for (const solver of [exactDynamicProgramming, makePartsSwapping(['third', 'no-such-part'])]) {
      const [summary] = summariseRuns(run(solver, 20_000));
      const exact = costOfPolicy(problem, solver.solve(problem).policy);
      expect(Math.abs(summary!.meanCost - exact) / summary!.standardError, solver.id).toBeLessThan(4);
    }
  });

  test('repeat for the same seed, in parts as in whole, and have the same causes under every policy', () => {
    const whole = run(exactDynamicProgramming, 60);
    expect(run(exactDynamicProgramming, 60)).toEqual(whole);
    expect([...run(exactDynamicProgramming, 25), ...run(exactDynamicProgramming, 35, { first: 25 })]).toEqual(whole);
    expect(run(makePartsSwapping([]), 60).map(({ trueCause }) => trueCause)).toEqual(
      whole.map(({ trueCause }) => trueCause),
    );
    expect(run(exactDynamicProgramming, 60, { seed: SEED + 1 })).not.toEqual(whole);
  });

  test('come out the same in one part or in several, each case in exactly one of them', () => {
    const whole = run(exactDynamicProgramming, 300);
    const parts = [0, 1, 2, 3].map((index) => run(exactDynamicProgramming, 300, { part: { index, of: 4 } }));
    expect(parts.flat().sort((a, b) => a.number - b.number)).toEqual(whole);
    expect(parts.filter((rows) => rows.length > 0).length).toBeGreaterThan(1);
  });

  test('ask the policy once per state, however many cases pass it', () => {
    const asked: string[] = [];
    const { policy } = exactDynamicProgramming.solve(problem);
    const decide: typeof policy = (state) => {
      asked.push(state.key);
      return policy(state);
    };
    run(exactDynamicProgramming, 2000, { prepare: () => ({ problem, decide }) });
    expect(new Set(asked).size).toBe(asked.length);
    expect(asked.length).toBeLessThan(60);
  });

  test('have a mean in its confidence interval, as wide as Student’s t says', () => {
    const [summary] = summariseRuns(run(exactDynamicProgramming, 11));
    // t(0.975, 10) = 2.22813885: NIST/SEMATECH e-Handbook 1.3.6.7.2, check E1
    expect((summary!.meanHigh - summary!.meanCost) / summary!.standardError).toBeCloseTo(2.22813885, 6);
    expect(summary!.meanLow + summary!.meanHigh).toBeCloseTo(2 * summary!.meanCost, 9);
  });

  test('count an opening as needless only when no repair of the true cause needs it', () => {
    const rows = run(makePartsSwapping(['second']), 500);
    for (const { trueCause, needlessOpenings } of rows) expect(needlessOpenings).toBe(trueCause === 'cause-2' ? 0 : 1);
    // an access that does not count as opening the engine
    const harmless = compileTableProblem({ ...tables, access: [{ cost: 30 }] });
    const { policy: decide } = makePartsSwapping(['second']).solve(harmless);
    const spared = run(makePartsSwapping(['second']), 500, { prepare: () => ({ problem: harmless, decide }) });
    expect(spared.every(({ needlessOpenings }) => needlessOpenings === 0)).toBe(true);
  });

  test('what a needless opening counts for is no part of what a case cost, and is part of what the policy is worth', () => {
    const dear = compileTableProblem({ ...tables, needlessOpening: 1000 });
    const swapping = makePartsSwapping(['second']);
    const rows = run(swapping, 2000, { prepare: () => ({ problem: dear, decide: swapping.solve(dear).policy }) });
    expect(rows).toEqual(run(swapping, 2000));
    const counted = (of: typeof problem) => costOfPolicy(of, swapping.solve(of).policy);
    expect(counted(dear) - counted(problem)).toBeCloseTo(1000 * 0.7, 9);
  });

  test('follow the truth where it differs from what is believed', () => {
    const truth = compileTableProblem({
      prior: [0, 0, 1],
      tests: [
        {
          id: 'look',
          cost: 8,
          outcomeGivenCause: [
            [1, 0],
            [1, 0],
            [1, 0],
          ],
        },
        {
          id: 'inside',
          cost: 5,
          outcomeGivenCause: [
            [1, 0],
            [1, 0],
            [1, 0],
          ],
        },
      ],
      repairs: [
        { id: 'first', cost: 60, cures: [0, 0, 0] },
        { id: 'second', cost: 90, cures: [0, 0, 0] },
        { id: 'third', cost: 140, cures: [0, 0, 0] },
      ],
      referralCost: [300, 330, 380],
    });
    const rows = run(exactDynamicProgramming, 50, { truthOf: () => makeTruthOfProblem(truth, 'third') });
    expect(rows.every(({ trueCause, end }) => trueCause === 'cause-3' && end === 'referred')).toBe(true);
    expect(rows.every((row) => row.truth === 'third')).toBe(true);
  });

  test('write one line of CSV each, under a header', () => {
    const lines = runsAsCsv(run(exactDynamicProgramming, 3)).trimEnd().split('\r\n');
    expect(lines).toHaveLength(4);
    expect(lines[0]).toBe('policy,number,truth,trueCause,cost,minutes,steps,tests,wrongRepairs,needlessOpenings,end');
    expect(lines[1]!.startsWith('exact,0,as-believed,cause-')).toBe(true);
  });
});
