import { makeExpectimax } from './makeExpectimax.ts';
import { makeSolver, type Solver } from './solver.ts';

const LOOK = makeExpectimax({ depth: 1, width: Infinity });

/** The test that saves most after its price if only repairs came after it, while one does; else the repair sequence.
 * Source: Heckerman, Breese & Rommelse 1995, CACM 38(3):49-57. */
export const oneStep: Solver = makeSolver('one-step', function* (problem, options) {
  return { ...(yield* LOOK.inTurns(problem, options)), solver: 'one-step' };
});
