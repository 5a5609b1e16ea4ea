import { caseState, factsOf, beliefOf } from '@faultodds/core';
import {
  allowedActions,
  makeLowerBound,
  compileCaseProblem,
  takeAction,
  type DecisionProblem,
  type DecisionState,
  type LowerBound,
} from '@faultodds/core/planning';
import { createRandom } from '../bench/seeded.mjs';
import { compiled, demos } from '../scenarios/misfireCases.ts';

export const SEED = 20261127;
export const TOLERANCE = 1e-9;
/** The worked cases whose states are walked, and after how many results. */
export const WALKED = [
  ['demo-01', 0],
  ['demo-10', 3],
  ['demo-12', 3],
] as const;

/** By how much the action that is worst in this respect lowers the bound more than it costs; negative: none does. */
export function worstExcess(problem: DecisionProblem, bound: LowerBound, state: DecisionState): number {
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

/** One state of the misfire model on a random walk. */
export interface WalkedState {
  readonly key: string;
  readonly bound: number;
  /** See `worstExcess`. */
  readonly excess: number;
}

/** States on random walks through the misfire model, from a worked case after some results. The same seed gives the same walks; a shorter
 * one begins as the longer. */
export function walkMisfire(id: string, results: number, walks: number, depth: number): WalkedState[] {
  const { context, observations } = factsOf(caseState(demos.get(id)!));
  const belief = beliefOf(compiled, { context, observations: observations.slice(0, results) });
  const problem = compileCaseProblem(compiled, belief);
  const bound = makeLowerBound(problem);
  const states: WalkedState[] = [];
  for (let walk = 0; walk < walks; walk += 1) {
    const random = createRandom(SEED + walk);
    let state: DecisionState | undefined = problem.start;
    for (let step = 0; step < depth && state !== undefined; step += 1) {
      states.push({ key: state.key, bound: bound(state), excess: worstExcess(problem, bound, state) });
      const actions = allowedActions(problem, state);
      const { branches } = takeAction(problem, state, actions[Math.floor(random() * actions.length)]!);
      const goesOn = branches.filter((branch) => branch.state !== undefined);
      let at = random() * goesOn.reduce((sum, { probability }) => sum + probability, 0);
      state = goesOn.find(({ probability }) => (at -= probability) <= 0)?.state;
    }
  }
  return states;
}
