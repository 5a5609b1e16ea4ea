import {
  allowedActions,
  makeLowerBound,
  compileTableProblem,
  takeAction,
  type DecisionState,
} from '@faultodds/core/planning';
import { expect, test } from 'vitest';
import { TOLERANCE, walkMisfire, WALKED, worstExcess } from './boundOnMisfire.ts';
import stored from './results/boundOnMisfire.json' with { type: 'json' };

// Source of the check: the optimality equation. A function that no action lowers by more than the action costs, at any state, is a lower
// bound of the optimum everywhere (de Farias & Van Roy 2003, Operations Research 51:850-865). It needs no optimum, so it can be checked
// on the whole misfire model, where none can be computed. Every state is dear, so all of them are walked by the long tests and stored.

test('on the misfire model no action lowered the bound by more than it cost, at any state that was walked', () => {
  expect(stored.cases.map(({ id, results }) => [id, results])).toEqual(WALKED);
  for (const { id, states } of stored.cases) {
    expect(states.length, id).toBeGreaterThan(6);
    for (const { key, bound, excess } of states) expect(excess, key).toBeLessThan(TOLERANCE * bound);
  }
});

test('the states that are stored are this program’s: the first two of one case come out the same', () => {
  const [id, results] = WALKED[2];
  const found = walkMisfire(id, results, 1, 2);
  const before = stored.cases[2]!.states;
  found.forEach(({ key, bound, excess }, at) => {
    expect(excess, key).toBeLessThan(TOLERANCE * bound);
    expect(key).toBe(before[at]!.key);
    expect(
      Math.abs(bound / before[at]!.bound - 1),
      `${key}: is it meant to differ? Then: npm run test:long`,
    ).toBeLessThan(1e-9);
  });
});

test('a test that hardly tells two causes apart and costs next to nothing does not undercut the bound', () => {
  // even odds are a point of the grid, where the value of the pair has a bend that any result takes it away from
  const problem = compileTableProblem({
    prior: [0.5, 0.5],
    tests: Array.from({ length: 6 }, (_, at) => ({
      id: `faint-${at}`,
      cost: 1e-6,
      outcomeGivenCause: [
        [0.51, 0.49],
        [0.49, 0.51],
      ],
    })),
    repairs: [
      { id: 'first', cost: 100, cures: [0.9, 0] },
      { id: 'second', cost: 100, cures: [0, 0.9] },
    ],
    referralCost: [600, 600],
  });
  const bound = makeLowerBound(problem);
  const walk = (state: DecisionState, depth: number): void => {
    expect(worstExcess(problem, bound, state), state.key).toBeLessThan(1e-7);
    if (depth === 0) return;
    for (const action of allowedActions(problem, state)) {
      for (const { state: then } of takeAction(problem, state, action).branches)
        if (then !== undefined) walk(then, depth - 1);
    }
  };
  walk(problem.start, 2);
});
