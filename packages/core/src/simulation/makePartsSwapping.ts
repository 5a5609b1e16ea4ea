import { REFER } from '../problem/action.ts';
import { allowedActions, chanceOfCure } from '../problem/allowedActions.ts';
import { solutionOfPolicy } from '../solvers/solutionOfPolicy.ts';
import { makeSolver, type Policy, type Solver } from '../solvers/solver.ts';
import { costOfPolicy } from '../solvers/costOfPolicy.ts';

// With less than this nobody buys the part. Judgement, 0.05-0.2.
const LEAST_CHANCE = 0.1;

/** The habit that plans are measured against: the usual parts first, in this order, whatever is known; then whichever repair is likeliest
 * to cure, price aside; a referral when none has one chance in ten. No tests. `upperBound` is its exact cost. `usual` holds repair ids;
 * those the problem does not know are skipped.
 * @example makePartsSwapping(['second', 'first']).solve(problem).progress.upperBound // 130, which is 70 + 0.6 * 100 */
export function makePartsSwapping(usual: readonly string[]): Solver {
  return makeSolver('parts-swapping', function* (problem) {
    yield;
    const order = usual.map((id) => problem.repairs.findIndex((repair) => repair.id === id)).filter((at) => at >= 0);
    const policy: Policy = (state) => {
      const repairs = allowedActions(problem, state).flatMap((action) =>
        action.kind === 'repair' ? [action.repair] : [],
      );
      const next = order.find((repair) => repairs.includes(repair));
      if (next !== undefined) return { kind: 'repair', repair: next };
      const [likeliest] = repairs
        .map((repair) => ({ repair, chance: chanceOfCure(problem, state, repair) }))
        .sort((a, b) => b.chance - a.chance);
      if (likeliest === undefined || likeliest.chance < LEAST_CHANCE) return REFER;
      return { kind: 'repair', repair: likeliest.repair };
    };
    return solutionOfPolicy(problem, 'parts-swapping', policy, costOfPolicy(problem, policy));
  });
}
