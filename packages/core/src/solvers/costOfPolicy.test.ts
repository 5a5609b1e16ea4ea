import { expect, test } from 'vitest';
import { compileTableProblem } from '../problem/compileTableProblem.ts';
import type { Policy } from './solver.ts';
import { costOfPolicy } from './costOfPolicy.ts';

test('every branch counts by its chance, down to the referral', () => {
  const outcomeGivenCause = [
    [0.9, 0.1],
    [0.2, 0.8],
  ];
  const problem = compileTableProblem({
    prior: [0.6, 0.4],
    tests: [{ id: 't', cost: 1, outcomeGivenCause }],
    repairs: [{ id: 'r', cost: 5, cures: [1, 0] }],
    referralCost: [20, 20],
  });
  const policy: Policy = ({ evidence: { results }, tried }) => {
    if (results.length === 0) return { kind: 'test', test: 0 };
    return results[0]!.outcome === 0 && tried.length === 0 ? { kind: 'repair', repair: 0 } : { kind: 'refer' };
  };
  // P(first) = 0.54 + 0.08: the repair, which cures 0.54 of it; what is left, and the second outcome, are handed on
  expect(costOfPolicy(problem, policy)).toBeCloseTo(1 + 0.62 * 5 + 0.08 * 20 + 0.38 * 20, 12);
});
