import { foundIn } from '../errors/foundIn.ts';
import { problemFor } from '../validation/problemFor.ts';
import { OptionError } from '../errors/optionError.ts';
import type { Action } from './action.ts';
import { chanceOfCure } from './allowedActions.ts';
import { openAfterTest } from './openAfterTest.ts';
import { countedFor } from '../repairs/needlessOpenings.ts';
import type { DecisionProblem, DecisionState, StepCost } from './decisionProblem.ts';
import { expectedTestCost } from './expectedTestCost.ts';
import { stateKey } from './startState.ts';

/** One thing that can come of an action. */
export interface Branch {
  /** Outcome id of a test; `cured`, `not-cured`; `referred`. */
  readonly outcome: string;
  readonly probability: number;
  /** Where it leads; `undefined` when the plan ends there. */
  readonly state: DecisionState | undefined;
}

/** An action with its expected cost and everything that can come of it; outcomes that cannot happen are left out. */
export interface Transition {
  readonly action: Action;
  /** What is paid. */
  readonly cost: StepCost;
  /** What its openings count for beyond their price if they prove needless, on average; nobody is paid it. Solvers make the sum of
   * `cost.money` and this as small as they can. */
  readonly needless: number;
  readonly branches: readonly Branch[];
}

/** What an action costs in a state on the average (a test that may find the fault asleep is made again then), and the states it can lead to.
 * Bayes's rule on the causes, exact.
 * @throws OptionError for a test or repair that the problem does not have
 * @example
 * ```ts
 * const { cost, branches } = takeAction(problem, problem.start, { kind: 'repair', repair: 0 });
 * cost // { money: 100, minutes: 0 }
 * branches.map(({ outcome, probability }) => [outcome, probability]) // [['cured', 0.6], ['not-cured', 0.4]]
 * ``` */
export function takeAction(problem: DecisionProblem, state: DecisionState, action: Action): Transition {
  switch (action?.kind) {
    case 'test':
      if (problem.tests[action.test] === undefined) throw noSuchAction('test', action.test, problem.tests);
      return doTest(problem, state, action);
    case 'repair':
      if (problem.repairs[action.repair] === undefined) throw noSuchAction('repair', action.repair, problem.repairs);
      return doRepair(problem, state, action);
    case 'refer': {
      const money = expectedReferralCost(problem, state.posterior);
      return {
        action,
        cost: { money, minutes: 0 },
        needless: 0,
        branches: [{ outcome: 'referred', probability: 1, state: undefined }],
      };
    }
    default:
      throw new OptionError([problemFor('kind-unknown', '/action/kind', { found: foundIn((action as Action)?.kind) })]);
  }
}

function noSuchAction(kind: 'test' | 'repair', index: number, list: readonly unknown[]): OptionError {
  const most = String(list.length - 1);
  return new OptionError([problemFor('number-out-of-list', `/action/${kind}`, { found: foundIn(index), most })]);
}

/** Expected cost of handing the case on: the fee and then the right repair. */
function expectedReferralCost({ repairFacts }: DecisionProblem, posterior: Float64Array): number {
  let cost = 0;
  for (let c = 0; c < posterior.length; c += 1) cost += posterior[c]! * repairFacts.referralCost[c]!;
  return cost;
}

function doTest(problem: DecisionProblem, state: DecisionState, action: Extract<Action, { kind: 'test' }>): Transition {
  const { test } = action;
  const { outcomes, answers } = problem.tests[test]!;
  const { posterior, evidence, tried } = state;
  const table = problem.outcomeTable(evidence, test);
  const cost = expectedTestCost(problem, state, test);
  const open = openAfterTest(problem, test, state.open);
  const spent = add(state.spent, cost);
  const closedTests = close(state.closedTests, [test, ...answers]);
  const count = outcomes.length;
  const branches: Branch[] = [];
  for (let o = 0; o < count; o += 1) {
    let probability = 0;
    for (let c = 0; c < posterior.length; c += 1) probability += posterior[c]! * table[c * count + o]!;
    if (probability <= 0) continue;
    const then = new Float64Array(posterior.length);
    for (let c = 0; c < then.length; c += 1) then[c] = (posterior[c]! * table[c * count + o]!) / probability;
    const after = problem.evidenceAfter(evidence, test, o);
    const key = stateKey(after, open, tried, spent, problem.limits);
    branches.push({
      outcome: outcomes[o]!,
      probability,
      state: {
        key,
        evidence: after,
        posterior: then,
        open,
        tried,
        closedTests,
        spent,
        chance: state.chance * probability,
      },
    });
  }
  const needless = countedFor(problem.repairFacts.needless, problem.testAccess[test]! & ~state.open, posterior);
  return { action, cost, needless, branches };
}

function doRepair(
  problem: DecisionProblem,
  state: DecisionState,
  action: Extract<Action, { kind: 'repair' }>,
): Transition {
  const { repair } = action;
  const cost = problem.repairCost(repair, state.open);
  const cured = Math.min(1, chanceOfCure(problem, state, repair));
  const branches: Branch[] = cured > 0 ? [{ outcome: 'cured', probability: cured, state: undefined }] : [];
  const remaining = Float64Array.from(state.posterior);
  for (const { cause, success } of problem.repairFacts.cures[repair]!) remaining[cause]! *= 1 - success;
  let left = 0;
  for (const p of remaining) left += p;
  if (left > 0) {
    const posterior = remaining.map((p) => p / left);
    const tried = [...state.tried, repair].sort((a, b) => a - b);
    const spent = add(state.spent, cost);
    const closedTests = close(state.closedTests, problem.repairs[repair]!.answers);
    // the check runs the engine closed
    const key = stateKey(state.evidence, 0, tried, spent, problem.limits);
    branches.push({
      outcome: 'not-cured',
      probability: left,
      state: {
        key,
        evidence: state.evidence,
        posterior,
        open: 0,
        tried,
        closedTests,
        spent,
        chance: state.chance * left,
      },
    });
  }
  const opened = problem.repairAccess[repair]! & ~state.open;
  return { action, cost, needless: countedFor(problem.repairFacts.needless, opened, state.posterior), branches };
}

function add(a: StepCost, b: StepCost): StepCost {
  return { money: a.money + b.money, minutes: a.minutes + b.minutes };
}

function close(closed: Uint8Array, tests: readonly number[]): Uint8Array {
  if (tests.every((test) => closed[test] === 1)) return closed;
  const after = closed.slice();
  for (const test of tests) after[test] = 1;
  return after;
}
