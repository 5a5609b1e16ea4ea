import {
  costOfPolicy,
  exactDynamicProgramming,
  boundedSearch,
  compileTableProblem,
  type ProblemTables,
} from '@faultodds/core/planning';
import { describe, expect, test } from 'vitest';

// Optimal plans of the published and constructed examples that advice one step ahead cannot reach (see `overlappingCures.test.ts` and
// `oneStepValue.test.ts`). Tolerance 1e-9.

/** Both exact ways: every state walked, and the bounded search run to a gap of nothing. */
function optimumOf(tables: ProblemTables): { readonly cost: number; readonly first: string } {
  const problem = compileTableProblem(tables);
  const { progress, policy } = exactDynamicProgramming.solve(problem);
  const searched = boundedSearch.solve(problem, { steps: 100_000 }).progress;
  expect(searched.upperBound).toBeCloseTo(progress.upperBound, 9);
  expect(searched.certifiedGap).toBeLessThan(1e-9);
  expect(costOfPolicy(problem, policy)).toBeCloseTo(progress.upperBound, 9);
  const { best } = progress;
  const first =
    best.kind === 'test'
      ? problem.tests[best.test]!.id
      : best.kind === 'repair'
        ? problem.repairs[best.repair]!.id
        : 'refer';
  return { cost: progress.upperBound, first };
}

test('two actions that cure two causes each: a2 first costs 1.45, a3, the likeliest, 1.5 (C5)', () => {
  // Langseth & Jensen (2003); Vomlelova (2003); instance constructed, all orders enumerated
  const found = optimumOf({
    prior: [0.2, 0.25, 0.4, 0.15],
    tests: [],
    repairs: [
      { id: 'a1', cost: 1, cures: [1, 1, 0, 0] },
      { id: 'a2', cost: 1, cures: [0, 0, 1, 1] },
      { id: 'a3', cost: 1, cures: [0, 1, 1, 0] },
    ],
    referralCost: [1e6, 1e6, 1e6, 1e6],
  });
  expect(found.cost).toBeCloseTo(1.45, 9);
  expect(found.first).toBe('a2');
});

describe('printing too light (C12)', () => {
  // Vomlelova M., Vomlel J. (2003) Soft Computing 7:357-368; partly our completion, solved by exact dynamic programming elsewhere
  const printer = (question: number): ProblemTables => ({
    prior: [0.4, 0.3, 0.2, 0.1],
    tests: [
      {
        id: 'q1',
        cost: question,
        outcomeGivenCause: [
          [1, 0],
          [1, 0],
          [0, 1],
          [0, 1],
        ],
      },
    ],
    repairs: [
      { id: 'a1', cost: 5, cures: [0.9, 0, 0, 0] },
      { id: 'a2', cost: 15, cures: [0.9, 0.9, 0, 0] },
      { id: 'a3', cost: 1, cures: [0, 0, 0.9, 0.9] },
    ],
    referralCost: [60, 60, 60, 60],
  });

  test('the question splits the causes perfectly and is still not worth 2: A3 first, 14.04', () => {
    const found = optimumOf(printer(2));
    expect(found.cost).toBeCloseTo(14.04, 9);
    expect(found.first).toBe('a3');
  });

  test('at a price of 1 it is asked first, 13.74', () => {
    const found = optimumOf(printer(1));
    expect(found.cost).toBeCloseTo(13.74, 9);
    expect(found.first).toBe('q1');
  });
});

test('two noisy tests, one decision: T1, then T2 where it pays, 16.75 (C11)', () => {
  // constructed, exact expectimax. One decision: a repair named "the fault is i" is free, and the referral for 60 covers all; trying a
  // second one is made too dear by an access that every check closes
  const certain = (cause: number) => [0, 1, 2].map((c) => Number(c === cause));
  const found = optimumOf({
    prior: [0.5, 0.3, 0.2],
    access: [{ cost: 1e6 }],
    open: [0],
    tests: [
      {
        id: 't1',
        cost: 4,
        outcomeGivenCause: [
          [0.9, 0.1],
          [0.2, 0.8],
          [0.2, 0.8],
        ],
      },
      {
        id: 't2',
        cost: 3,
        outcomeGivenCause: [
          [0.5, 0.5],
          [0.9, 0.1],
          [0.1, 0.9],
        ],
      },
    ],
    repairs: ['a', 'b', 'c'].map((id, cause) => ({ id, cost: 0, access: 0, cures: certain(cause) })),
    referralCost: [60, 60, 60],
  });
  expect(found.cost).toBeCloseTo(16.75, 9);
  expect(found.first).toBe('t1');
});
