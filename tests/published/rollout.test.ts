// Rollout on troubleshooting with actions that cure several causes (check D37): the setting of Bertsekas, Tsitsiklis & Wu 1997, Journal of
// Heuristics 3:245-262; the numbers are constructed, all 720 orders enumerated. The greedy order by chance over cost is the plan the search
// begins with; its first step is a rollout of it.
import { boundedSearch, compileTableProblem, repairOrder, takeAction } from '@faultodds/core/planning';
import { describe, expect, test } from 'vitest';
import { createSearch } from '../../packages/core/src/solvers/boundedSearch.ts';
import { runToEnd } from '../../packages/core/src/turns/runToEnd.ts';

const cures = [[1, 4], [4], [2, 3, 4], [3, 5], [2], [1, 5]];
const cost = [5, 6, 8, 2, 4, 1];
const prior = [1 / 4, 3 / 20, 3 / 20, 1 / 5, 1 / 4];
const problem = compileTableProblem({
  prior,
  tests: [],
  repairs: cures.map((causes, at) => ({
    id: `action-${at + 1}`,
    cost: cost[at]!,
    cures: prior.map((_, cause) => Number(causes.includes(cause + 1))),
  })),
  referralCost: prior.map(() => 1e6),
});

/** What beginning with each action costs when the greedy order takes over, from a state on, rounded. */
function firstSteps(start = problem.start): Record<string, number> {
  const search = createSearch({ ...problem, start });
  runToEnd(search.go({ steps: 1 }));
  return Object.fromEntries(
    search.firstSteps().flatMap(({ action, upper }) => {
      return action.kind === 'repair' ? [[action.repair + 1, Number(upper.toFixed(9))]] : [];
    }),
  );
}

describe('D37', () => {
  test('the greedy order costs 4.80', () => {
    expect(repairOrder.solve(problem).progress.upperBound).toBeCloseTo(4.8, 12);
  });

  test('every first action with the greedy order after it', () => {
    expect(firstSteps()).toEqual({ 1: 6.75, 2: 8, 3: 8.5, 4: 5.4, 5: 6.55, 6: 4.8 });
  });

  test('after action 6 the first again: with it 4.70 in all', () => {
    const { cost: paid, branches } = takeAction(problem, problem.start, { kind: 'repair', repair: 5 });
    const left = branches.find(({ state }) => state !== undefined)!;
    const whole = Object.entries(firstSteps(left.state)).map(([action, upper]) => [
      action,
      Number((paid.money + left.probability * upper).toFixed(9)),
    ]);
    expect(Object.fromEntries(whole)).toEqual({ 1: 4.7, 2: 5.2, 3: 5, 4: 4.8, 5: 4.7 });
  });

  test('the optimum costs 4.35 and is found', () => {
    const { progress } = boundedSearch.solve(problem);
    expect(progress.upperBound).toBeCloseTo(4.35, 12);
    expect(progress.lowerBound).toBeLessThanOrEqual(4.35 + 1e-12);
  });
});
