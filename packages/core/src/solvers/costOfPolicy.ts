import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import type { DecisionProblem, DecisionState } from '../problem/decisionProblem.ts';
import type { Policy } from './solver.ts';
import { takeAction } from '../problem/takeAction.ts';

const optionsSchema = z.strictObject({
  from: z.optional(z.looseObject({ key: z.string(), chance: z.number() })),
  leastProbability: z.optional(optionSchemas.number(0, 1)),
});

/** Exact expected cost of following a policy from the start (or from `from`), in the problem's currency, with what openings that
 * prove needless count for. Walks every state the policy
 * reaches with at least `leastProbability` (default 0); what is reached more rarely counts as referred, so the figure stays that of a
 * feasible plan. The policy must end: every test and repair is taken at most once, so any policy of allowed actions does.
 * @throws OptionError
 * @example costOfPolicy(problem, repairOrder.solve(problem).policy) // 128, which is 100 + 0.4 * 70 */
export function costOfPolicy(
  problem: DecisionProblem,
  policy: Policy,
  options: { readonly from?: DecisionState; readonly leastProbability?: number } = {},
): number {
  checkOptions(optionsSchema, options);
  const { from = problem.start, leastProbability = 0 } = options;
  const known = new Map<string, number>();
  const costAt = (state: DecisionState, reached: number): number => {
    const already = known.get(state.key);
    if (already !== undefined) return already;
    if (reached < leastProbability) return takeAction(problem, state, { kind: 'refer' }).cost.money;
    const { cost, needless, branches } = takeAction(problem, state, policy(state));
    let total = cost.money + needless;
    for (const { probability, state: then } of branches) {
      if (then !== undefined) total += probability * costAt(then, reached * probability);
    }
    known.set(state.key, total);
    return total;
  };
  return costAt(from, 1);
}
