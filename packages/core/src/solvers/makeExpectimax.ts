import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { runToEnd } from '../turns/runToEnd.ts';
import type { Turns } from '../turns/turns.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import { allowedActions, chanceOfCure, isOpenTo } from '../problem/allowedActions.ts';
import { isEngineApart } from '../problem/openAfterTest.ts';
import type { Action } from '../problem/action.ts';
import type { DecisionProblem, DecisionState } from '../problem/decisionProblem.ts';
import { makeFeasiblePlan, firstOf } from '../bounds/makeFeasiblePlan.ts';
import { costOfKnowing, makePerfectInformation } from '../bounds/makePerfectInformation.ts';
import { takeAction, type Transition } from '../problem/takeAction.ts';
import { certifiedGap, makeSolver, type Solver } from './solver.ts';

interface Found {
  readonly cost: number;
  readonly action: Action;
}

/** How far and how broadly to look ahead. */
export interface ExpectimaxOptions {
  /** Tests and repairs looked ahead, at least 1. */
  readonly depth: number;
  /** Actions followed deeper at each state, best one-step values first. Default 6. */
  readonly width?: number;
}

const optionsSchema = z.strictObject({
  depth: optionSchemas.whole(1, 1000),
  width: z.optional(optionSchemas.budget(1)),
});

/** Looks `depth` actions ahead, as if only repairs without tests came after. Beliefs reached in different ways are evaluated once; only the
 * `width` most promising actions are followed deeper, so with a small width a pair of tests that are only worth it together can be missed.
 * `upperBound` is the exact cost of the plan made at the start; its policy plans anew at every state. `steps` bounds the states examined
 * (default: none); beyond it the sequence of repairs stands.
 * @throws OptionError
 * @example makeExpectimax({ depth: 2 }).solve(problem).progress.upperBound // 108
 * Source: averaging out and folding back, Raiffa 1968; expectimax, Michie 1966. Pruning by one-step value is ours. */
export function makeExpectimax(look: ExpectimaxOptions): Solver {
  checkOptions(optionsSchema, look);
  const { depth, width = 6 } = look;
  const id = `expectimax-${depth}`;
  return makeSolver(id, function* (problem, { steps = Infinity, signal, onImprove }) {
    const plan = makeFeasiblePlan(problem);
    const known = new Map<string, Found>();
    const followUps = problem.tests.flatMap(({ follows }, test) => (follows.length > 0 ? [test] : []));
    let walked = 0;

    const repairsOnly = (state: DecisionState): Found => {
      const sequence = plan(state);
      return { cost: sequence.expectedCost, action: firstOf(sequence) };
    };
    const look = function* (state: DecisionState, deep: number): Turns<Found> {
      if (deep === 0) return restOf(state);
      let best = repairsOnly(state);
      const key = `${deep}:${state.key}`;
      const already = known.get(key);
      if (already !== undefined) return already;
      if (walked >= steps || signal?.aborted === true) return best;
      walked += 1;
      yield;
      const first = chosen(problem, state).map((transition) => ({ transition, cost: foldPlain(transition, restOf) }));
      first.sort((a, b) => a.cost - b.cost);
      for (const { transition, cost } of deep === 1 ? first.slice(0, 1) : first.slice(0, width)) {
        const total = deep === 1 ? cost : yield* fold(transition, deep - 1);
        if (total < best.cost) best = { cost: total, action: transition.action };
      }
      known.set(key, best);
      return best;
    };
    const foldPlain = ({ cost, needless, branches }: Transition, rest: (state: DecisionState) => Found): number => {
      let total = cost.money + needless;
      for (const { probability, state } of branches) if (state !== undefined) total += probability * rest(state).cost;
      return total;
    };
    // a result that calls for a follow-up is worth what the follow-up makes of it
    const restOf = (state: DecisionState): Found => {
      let best = repairsOnly(state);
      for (const test of followUps) {
        if (state.closedTests[test] === 1 || !isOpenTo(problem, state.evidence, test)) continue;
        if (isEngineApart(problem, test, state.open)) continue;
        const action = { kind: 'test', test } as const;
        const cost = foldPlain(takeAction(problem, state, action), repairsOnly);
        if (cost < best.cost) best = { cost, action };
      }
      return best;
    };
    const fold = function* ({ cost, needless, branches }: Transition, deep: number): Turns<number> {
      let total = cost.money + needless;
      for (const { probability, state } of branches) {
        if (state !== undefined) total += probability * (yield* look(state, deep)).cost;
      }
      return total;
    };

    const { start } = problem;
    const lowerBound = costOfKnowing(makePerfectInformation(problem)(start.open, start.tried), start);
    const { cost, action } = yield* look(start, depth);
    const progress = {
      best: action,
      lowerBound,
      upperBound: cost,
      certifiedGap: certifiedGap(lowerBound, cost),
      steps: walked,
    };
    onImprove?.(progress);
    return { solver: id, policy: (state) => runToEnd(look(state, depth)).action, progress };
  });
}

/** Every test, and every repair with more than a hair of a chance. */
function chosen(problem: DecisionProblem, state: DecisionState): Transition[] {
  return allowedActions(problem, state)
    .filter(
      (action) =>
        action.kind === 'test' || (action.kind === 'repair' && chanceOfCure(problem, state, action.repair) > 0.01),
    )
    .map((action) => takeAction(problem, state, action));
}
