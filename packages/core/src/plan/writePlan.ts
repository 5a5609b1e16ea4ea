import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import type { Action } from '../problem/action.ts';
import type { DecisionProblem, DecisionState } from '../problem/decisionProblem.ts';
import { runToEnd } from '../turns/runToEnd.ts';
import type { Turns } from '../turns/turns.ts';
import { lookOnce } from './lookOnce.ts';
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
  /** Where the policy follows the repairs without a test, because nobody has searched there, states at least this likely are looked at one test
   * ahead before they are written as a step to take; less likely ones are marked as not examined. Default 0.01. */
  readonly leastLooked?: number;
}

const optionsSchema = z.strictObject({
  depth: z.optional(optionSchemas.budget(1)),
  leastProbability: z.optional(optionSchemas.number(0, 1)),
  leastLooked: z.optional(optionSchemas.number(0, 1)),
});

/** A solution written out as a tree of steps with the probability of every branch, and the spread of what it costs. Costs are exact for
 * the plan as written. What the solver has not searched is looked at before it is written, or marked (`leastLooked`): the plan
 * costs less than the solution then.
 * @throws OptionError
 * @example
 * ```ts
 * const written = writePlan(problem, boundedSearch.solve(problem));
 * written.root.id // 'tell'
 * written.cost.expected // { amount: 108, currency: 'unit' }
 * written.cost.worst // { amount: 120, currency: 'unit' }
 * ``` */
export function writePlan(problem: DecisionProblem, solution: Solution, options: WritePlanOptions = {}): Plan {
  return runToEnd(writePlanInTurns(problem, solution, options));
}

/** The same in turns: gives way after every look at a state.
 * @throws OptionError at once
 * @example runToEnd(writePlanInTurns(problem, boundedSearch.solve(problem))).root.id // 'tell' */
export function writePlanInTurns(
  problem: DecisionProblem,
  solution: Solution,
  options: WritePlanOptions = {},
): Turns<Plan> {
  checkOptions(optionsSchema, options);
  return writeInTurns(problem, solution, options);
}

function* writeInTurns(problem: DecisionProblem, solution: Solution, options: WritePlanOptions): Turns<Plan> {
  const { depth = 4, leastProbability = 1e-4, leastLooked = 0.01 } = options;
  const money = (amount: number) => ({ amount, currency: problem.currency });
  const costs: WeightedCost[] = [];

  const walk = function* (
    state: DecisionState,
    reached: number,
    deep: number,
  ): Turns<PlanStep & { readonly below: number }> {
    const isRare = reached < leastProbability;
    const grounds = isRare ? 'none' : (solution.groundsAt?.(state) ?? 'search');
    // the look of a search does not know what a result would call for; this one does
    const isLookedAt = !isRare && grounds !== 'search' && deep < depth + LOOKED_BELOW && reached >= leastLooked;
    const action = isRare ? REFER : isLookedAt ? lookOnce(problem)(state) : solution.policy(state);
    if (isLookedAt) yield;
    const { cost, branches } = takeAction(problem, state, action);
    let expected = cost.money;
    let below = 0;
    if (action.kind === 'refer') collectReferral(problem, state, reached, costs);
    const written: PlanBranch[] = [];
    for (const { outcome, probability, state: then } of branches) {
      if (then === undefined) {
        if (action.kind !== 'refer') {
          costs.push({ probability: reached * probability, cost: state.spent.money + cost.money });
        }
        written.push({ outcome, probability });
        continue;
      }
      const { below: deeper, ...step } = yield* walk(then, reached * probability, deep + 1);
      expected += probability * step.expectedCost.amount;
      below += 1 + deeper;
      // oxlint-disable-next-line unicorn/no-thenable -- a step, not a function: awaiting a branch does nothing to it
      written.push(deep + 1 < depth ? { outcome, probability, then: step } : { outcome, probability });
    }
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
      ...(grounds === 'none' && !isLookedAt ? { examined: false as const } : {}),
      below,
    };
  };

  const { below: _, ...root } = yield* walk(problem.start, 1, 0);
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

/** Levels below what is written out: what a step leads to decides whether it is worth its price. */
const LOOKED_BELOW = 2;

const REFER: Action = { kind: 'refer' };

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
