import { runToEnd } from '../turns/runToEnd.ts';
import type { Turns } from '../turns/turns.ts';
import type { Action } from '../problem/action.ts';
import { REFER } from '../problem/action.ts';
import { allowedActions } from '../problem/allowedActions.ts';
import type { DecisionState } from '../problem/decisionProblem.ts';
import { takeAction } from '../problem/takeAction.ts';
import { makeSolver, type Solver } from './solver.ts';

interface Found {
  readonly cost: number;
  readonly action: Action;
}

/** The optimum, by walking every state that can be reached once. For small problems only: their number grows with the product of outcomes +
 * 1 over all tests, times 2 to the number of repairs, times what can be open.
 *
 * When cut short (`steps`, `signal`) the states not reached yet count as referred: still the cost of a feasible plan, with no lower bound.
 * Default: no limit.
 * Source: backward induction over beliefs, Bellman 1957; Smallwood & Sondik 1973, Operations Research 21:1071-1088. */
export const exactDynamicProgramming: Solver = makeSolver('exact', function* (problem, { steps = Infinity, signal }) {
  const known = new Map<string, Found>();
  let walked = 0;
  let isCut = false;
  const solveAt = function* (state: DecisionState): Turns<Found> {
    if (walked >= steps || signal?.aborted === true) {
      isCut = true;
      return { cost: takeAction(problem, state, REFER).cost.money, action: REFER };
    }
    walked += 1;
    yield;
    let cost = Infinity;
    let action: Action = REFER;
    for (const tried of allowedActions(problem, state)) {
      const { cost: price, needless, branches } = takeAction(problem, state, tried);
      let total = price.money + needless;
      for (const { probability, state: then } of branches) {
        if (total >= cost) break; // costs are not negative
        if (then !== undefined) total += probability * (known.get(then.key) ?? (yield* solveAt(then))).cost;
      }
      if (total < cost) [cost, action] = [total, tried];
    }
    const answer = { cost, action };
    known.set(state.key, answer);
    return answer;
  };
  const { cost, action } = yield* solveAt(problem.start);
  return {
    solver: 'exact',
    policy: (state) => (known.get(state.key) ?? runToEnd(solveAt(state))).action,
    progress: {
      best: action,
      lowerBound: isCut ? 0 : cost,
      upperBound: cost,
      certifiedGap: isCut ? 1 : 0,
      steps: walked,
    },
  };
});
