import {
  allowedActions,
  boundedSearch,
  costOfPolicy,
  exactDynamicProgramming,
  makeLowerBound,
  repairOrder,
  compileTableProblem,
  takeAction,
  type DecisionState,
} from '@faultodds/core/planning';
import { createRandom } from '../bench/seeded.mjs';
import { randomTables } from './decisionRandomTables.mjs';

export const SEED = 20261125;
/** Relative. */
export const TOLERANCE = 1e-9;
/** Problems summed up in one row of the stored results. */
export const BLOCK = 100;

/** What a block of problems came to: sums, so that a changed digit anywhere shows. */
export interface BlockOfProblems {
  readonly optima: number;
  readonly lowerBounds: number;
  readonly upperBounds: number;
}

/** Searches random problems as they come from the seed and holds every stage of the search against the optimum, which is computed by walking
 * every state a plan can reach. @param blocks of 100 problems each @throws TypeError with the problem where a bound is on the wrong side */
export function boundsOfProblems(blocks: number): BlockOfProblems[] {
  const random = createRandom(SEED);
  return Array.from({ length: blocks }, (_, block) => {
    const sums = { optima: 0, lowerBounds: 0, upperBounds: 0 };
    for (let at = block * BLOCK; at < (block + 1) * BLOCK; at += 1) {
      const tables = randomTables(random);
      const problem = compileTableProblem(tables);
      const optimum = exactDynamicProgramming.solve(problem).progress.upperBound;
      const slack = TOLERANCE * (1 + optimum);
      const check = (lower: number, upper: number): void => {
        if (lower > optimum + slack || upper < optimum - slack)
          throw new TypeError(
            `problem ${at} of seed ${SEED}: ${lower} <= ${optimum} <= ${upper} is false: ${JSON.stringify(tables)}`,
          );
      };
      const { progress } = boundedSearch.solve(problem, {
        steps: at % 40,
        onImprove: ({ lowerBound, upperBound }) => check(lowerBound, upperBound),
      });
      check(progress.lowerBound, progress.upperBound);
      sums.optima += optimum;
      sums.lowerBounds += progress.lowerBound;
      sums.upperBounds += progress.upperBound;
    }
    return sums;
  });
}

/** What a walk through every state of some problems found. */
export interface StatesOfProblems {
  readonly states: number;
  /** States where the bound is above what perfect information says. */
  readonly higher: number;
}

/** Holds the bound made at the start against the optimum at every state that can be reached.
 * @throws TypeError with the state where it is above the optimum, or below perfect information */
export function boundsOfStates(problems: number): StatesOfProblems {
  const random = createRandom(SEED + 5);
  let states = 0;
  let higher = 0;
  for (let at = 0; at < problems; at += 1) {
    const tables = randomTables(random);
    const problem = compileTableProblem(tables);
    const exact = exactDynamicProgramming.solve(problem);
    const bound = makeLowerBound(problem);
    const seen = new Set<string>();
    const walk = (state: DecisionState): void => {
      if (seen.has(state.key)) return;
      seen.add(state.key);
      states += 1;
      const optimum = costOfPolicy(problem, exact.policy, { from: state });
      const perfect = repairOrder.solve({ ...problem, start: state }).progress.lowerBound;
      const lower = bound(state);
      if (lower > optimum + TOLERANCE * (1 + optimum) || lower < perfect - TOLERANCE * (1 + perfect))
        throw new TypeError(
          `problem ${at} of seed ${SEED + 5} at ${state.key}: ${perfect} <= ${lower} <= ${optimum} is false: ${JSON.stringify(tables)}`,
        );
      if (lower > perfect * 1.001) higher += 1;
      for (const action of allowedActions(problem, state)) {
        for (const { state: then } of takeAction(problem, state, action).branches) if (then !== undefined) walk(then);
      }
    };
    walk(problem.start);
  }
  return { states, higher };
}
