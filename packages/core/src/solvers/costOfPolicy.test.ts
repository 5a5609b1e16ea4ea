import { describe, expect, test } from 'vitest';
import { OptionError } from '../errors/optionError.ts';
import { compileTableProblem } from '../problem/compileTableProblem.ts';
import { takeAction } from '../problem/takeAction.ts';
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

describe('two tests that tell nothing, then the referral', () => {
  const even = [
    [0.5, 0.5],
    [0.5, 0.5],
  ];
  const problem = compileTableProblem({
    prior: [0.6, 0.4],
    tests: [
      { id: 's', cost: 1, outcomeGivenCause: even },
      { id: 't', cost: 2, outcomeGivenCause: even },
    ],
    repairs: [{ id: 'r', cost: 5, cures: [1, 0] }],
    referralCost: [20, 30],
  });
  const asked: string[] = [];
  const policy: Policy = ({ key, evidence: { results } }) => {
    asked.push(key);
    return results.length < 2 ? { kind: 'test', test: results.length } : { kind: 'refer' };
  };

  test('cost the two and 0.6 * 20 + 0.4 * 30, and every state is asked once', () => {
    asked.length = 0;
    expect(costOfPolicy(problem, policy)).toBeCloseTo(1 + 2 + 24, 12);
    // the start, two after the first, four after both
    expect(asked).toHaveLength(7);
    expect(new Set(asked).size).toBe(7);
  });

  test('what is reached more rarely than asked for is handed on, and the policy is not asked', () => {
    asked.length = 0;
    // after the first each branch has a half: below 0.6 no second test
    expect(costOfPolicy(problem, policy, { leastProbability: 0.6 })).toBeCloseTo(1 + 24, 12);
    expect(asked).toHaveLength(1);
    // at 0.5 it is reached often enough; a quarter is not
    asked.length = 0;
    expect(costOfPolicy(problem, policy, { leastProbability: 0.5 })).toBeCloseTo(1 + 2 + 24, 12);
    expect(asked).toHaveLength(3);
  });

  test('from another state cost what is left, at the belief there', () => {
    const { branches } = takeAction(problem, problem.start, { kind: 'repair', repair: 0 });
    const from = branches.find(({ outcome }) => outcome === 'not-cured')!.state!;
    // only the second cause is left
    expect(costOfPolicy(problem, policy, { from })).toBeCloseTo(1 + 2 + 30, 12);
    expect(costOfPolicy(problem, () => ({ kind: 'refer' }), { from })).toBeCloseTo(30, 12);
  });
});

test('options that are none are refused', () => {
  const problem = compileTableProblem({ prior: [1], tests: [], repairs: [], referralCost: [3] });
  const refer: Policy = () => ({ kind: 'refer' });
  expect(costOfPolicy(problem, refer)).toBe(3);
  expect(() => costOfPolicy(problem, refer, { leastProbability: 1.5 })).toThrow(OptionError);
  expect(() => costOfPolicy(problem, refer, { leastProbability: -0.1 })).toThrow(OptionError);
});
