import * as z from 'zod/mini';
import { checkOptions } from '../validation/checkOptions.ts';
import { optionSchemas } from '../validation/optionSchemas.ts';
import type { Cancel } from '../turns/cancel.ts';
import { runToEnd } from '../turns/runToEnd.ts';
import type { Turns } from '../turns/turns.ts';
import { untilAborted } from '../turns/untilAborted.ts';
import type { DecisionProblem } from '../problem/decisionProblem.ts';
import type { LowerBound } from './lowerBound.ts';
import { makePairBound } from './makePairBound.ts';
import { pairBudgetsInTurns } from './pairBudgets.ts';
import { compilePairGameInTurns } from './pairGame.ts';
import { costOfKnowing, makePerfectInformation } from './makePerfectInformation.ts';

const optionsSchema = z.strictObject({ signal: z.optional(optionSchemas.signal) });

/** The strongest lower bound known for a problem. The signal is looked at after every few hundred pairs of causes at most; aborted, what
 * comes back is the bound of perfect information: weaker, and as true.
 * @throws OptionError
 * @example makeLowerBound(problem)(problem.start) // 108, no plan costs less */
export function makeLowerBound(problem: DecisionProblem, options: { readonly signal?: Cancel } = {}): LowerBound {
  checkOptions(optionsSchema, options);
  const bound = runToEnd(untilAborted(makeLowerBoundInTurns(problem), options.signal));
  if (bound !== undefined) return bound;
  const knowing = makePerfectInformation(problem);
  return (state) => costOfKnowing(knowing(state.open, state.tried), state);
}

/** The same, giving way after every few hundred pairs at most. */
export function* makeLowerBoundInTurns(problem: DecisionProblem): Turns<LowerBound> {
  problem.configurations();
  yield;
  const game = yield* compilePairGameInTurns(problem);
  const budgets = yield* pairBudgetsInTurns(game);
  return makePairBound(problem, game, budgets);
}
