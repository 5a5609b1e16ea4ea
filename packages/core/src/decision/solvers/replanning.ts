import { checkOptions } from '../../errors/checkOptions.ts';
import { search } from './boundedSearch.ts';
import { solverOptionsSchema, type Policy, type Solver } from './solver.ts';

/** Bounded search anew at every place, a few steps each, with the bound of perfect information: what somebody does who asks again after
 * every result. `upperBound` is the cost of the first plan; `steps` is the budget at every place (default 12).
 * Source: see `boundedSearch`. */
export const replanning: Solver = {
  id: 'replanning',
  solve: (problem, given = {}) => {
    checkOptions(solverOptionsSchema, given);
    const { steps = 12, signal } = given;
    const options = signal === undefined ? { steps } : { steps, signal };
    const at = (start: Parameters<Policy>[0]) => search({ ...problem, start }, options).progress;
    return { solver: 'replanning', policy: (state) => at(state).best, progress: at(problem.start) };
  },
};
