import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import type { Action } from '../problem/action.ts';
import type { DecisionProblem, DecisionState } from '../problem/decisionProblem.ts';
import type { Plan, PlanBranch, PlanStep } from './plan.ts';
import { certifiedGap, type Solution } from '../solvers/solver.ts';
import { spreadOfCosts, type WeightedCost } from './spreadOfCosts.ts';
import { takeAction } from '../problem/takeAction.ts';

/** How much of a plan is written out. */
export interface WritePlanOptions {
  /** Steps written out below each other; deeper ones are counted and folded. Default 4. */
  readonly depth?: number;
  /** Branches less likely than this end in a referral instead of being planned: their number explodes, their weight does not. Default 1e-4. */
  readonly leastProbability?: number;
}

const optionsSchema = z.strictObject({
  depth: z.optional(optionSchemas.budget(1)),
  leastProbability: z.optional(optionSchemas.number(0, 1)),
});

/** A solution written out as a tree of steps with the probability of every branch, and the spread of what it costs. Costs are exact for
 * the plan as written.
 * @throws OptionError
 * @example
 * ```ts
 * const written = writePlan(problem, boundedSearch.solve(problem));
 * written.root.id // 'tell'
 * written.cost.expected // { amount: 108, currency: 'unit' }
 * written.cost.worst // { amount: 120, currency: 'unit' }
 * ``` */
export function writePlan(problem: DecisionProblem, solution: Solution, options: WritePlanOptions = {}): Plan {
  checkOptions(optionsSchema, options);
  const { depth = 4, leastProbability = 1e-4 } = options;
  const money = (amount: number) => ({ amount, currency: problem.currency });
  const costs: WeightedCost[] = [];

  const walk = (state: DecisionState, reached: number, deep: number): PlanStep & { readonly below: number } => {
    const action: Action = reached < leastProbability ? { kind: 'refer' } : solution.policy(state);
    const { cost, branches } = takeAction(problem, state, action);
    let expected = cost.money;
    let below = 0;
    if (action.kind === 'refer') collectReferral(problem, state, reached, costs);
    const written = branches.map(({ outcome, probability, state: then }): PlanBranch => {
      if (then === undefined) {
        if (action.kind !== 'refer') {
          costs.push({ probability: reached * probability, cost: state.spent.money + cost.money });
        }
        return { outcome, probability };
      }
      const { below: deeper, ...step } = walk(then, reached * probability, deep + 1);
      expected += probability * step.expectedCost.amount;
      below += 1 + deeper;
      // oxlint-disable-next-line unicorn/no-thenable -- a step, not a function: awaiting a branch does nothing to it
      return deep + 1 < depth ? { outcome, probability, then: step } : { outcome, probability };
    });
    return {
      kind: action.kind,
      id: idOfAction(problem, action),
      ...problem.stepFacts(action, state.open),
      price: money(cost.money),
      minutes: cost.minutes,
      reached,
      expectedCost: money(expected),
      branches: written,
      folded: deep + 1 < depth ? 0 : below,
      below,
    };
  };

  const { below: _, ...root } = walk(problem.start, 1, 0);
  const { lowerBound } = solution.progress;
  const expected = root.expectedCost.amount;
  return {
    format: 'faultodds-plan',
    version: 1,
    ...(problem.model === undefined ? {} : { model: problem.model() }),
    solver: solution.solver,
    cost: spreadOfCosts(costs, expected, problem.currency),
    lowerBound: money(lowerBound),
    certifiedGap: certifiedGap(lowerBound, expected),
    root,
  };
}

/** Id of what an action does. */
function idOfAction({ tests, repairs, referral }: DecisionProblem, action: Action): string {
  switch (action.kind) {
    case 'test':
      return tests[action.test]!.id;
    case 'repair':
      return repairs[action.repair]!.id;
    case 'refer':
      return referral.id;
  }
}

function collectReferral(
  { repairFacts }: DecisionProblem,
  { posterior, spent }: DecisionState,
  reached: number,
  costs: WeightedCost[],
): void {
  posterior.forEach((p, cause) => {
    if (p > 0) costs.push({ probability: reached * p, cost: spent.money + repairFacts.referralCost[cause]! });
  });
}
