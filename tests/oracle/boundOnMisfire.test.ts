import {
  allowedActions,
  caseState,
  factsOf,
  lowerBoundOf,
  problemOfCase,
  tableProblem,
  takeAction,
  updateBelief,
  type DecisionProblem,
  type DecisionState,
  type LowerBound,
} from '@faultodds/core';
import { expect, test } from 'vitest';
import { seededRandom } from '../bench/seeded.mjs';
import { compiled, demos } from '../scenarios/misfireCases.ts';

// Source of the check: the optimality equation. A function that no action lowers by more than the action costs, at any place, is a lower
// bound of the optimum everywhere (de Farias & Van Roy 2003, Operations Research 51:850-865). It needs no optimum, so it can be checked
// on the whole misfire model, where none can be computed.
const SEED = 20261127;
const TOLERANCE = 1e-9;

/** By how much the action that is worst in this respect lowers the bound more than it costs; negative: none does. */
function worstExcess(problem: DecisionProblem, bound: LowerBound, state: DecisionState): number {
  const here = bound(state);
  let worst = -Infinity;
  for (const action of allowedActions(problem, state)) {
    const { cost, branches } = takeAction(problem, state, action);
    let after = cost.money;
    for (const { probability, state: then } of branches) if (then !== undefined) after += probability * bound(then);
    worst = Math.max(worst, here - after);
  }
  return worst;
}

test.each([
  ['demo-01', 0],
  ['demo-10', 3],
  ['demo-12', 3],
] as const)(
  'on the misfire model no action lowers the bound by more than it costs: %s after %i results',
  (id, results) => {
    const { context, observations } = factsOf(caseState(demos.get(id)!));
    const belief = updateBelief(compiled, { context, observations: observations.slice(0, results) });
    const problem = problemOfCase(compiled, belief);
    const bound = lowerBoundOf(problem);
    const random = seededRandom(SEED);
    let places = 0;
    for (let walk = 0; walk < 3; walk += 1) {
      let state: DecisionState | undefined = problem.start;
      for (let depth = 0; depth < 5 && state !== undefined; depth += 1) {
        expect(worstExcess(problem, bound, state), `seed ${SEED} at ${state.key}`).toBeLessThan(
          TOLERANCE * bound(state),
        );
        places += 1;
        const actions = allowedActions(problem, state);
        const { branches } = takeAction(problem, state, actions[Math.floor(random() * actions.length)]!);
        const goesOn = branches.filter((branch) => branch.state !== undefined);
        let at = random() * goesOn.reduce((sum, { probability }) => sum + probability, 0);
        state = goesOn.find(({ probability }) => (at -= probability) <= 0)?.state;
      }
    }
    expect(places).toBeGreaterThan(6);
  },
);

test('a test that hardly tells two causes apart and costs next to nothing does not undercut the bound', () => {
  // even odds are a point of the grid, where the value of the pair has a bend that any result takes it away from
  const problem = tableProblem({
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
  const bound = lowerBoundOf(problem);
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
