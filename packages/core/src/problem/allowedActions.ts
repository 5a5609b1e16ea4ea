import { REFER, type Action } from './action.ts';
import { expectedTestCost } from './expectedTestCost.ts';
import { isEngineApart } from './openAfterTest.ts';
import type { DecisionProblem, DecisionState, EvidenceSet, StepCost } from './decisionProblem.ts';

/** What can be done in a state: tests that are neither done nor answered, whose look has shown something and
 * for which the engine is not too far apart, repairs that are not tried and
 * can cure something, both within the limits; and always the referral, last.
 * @example allowedActions(problem, problem.start).map(({ kind }) => kind) // ['test', 'repair', 'repair', 'refer'] */
export function allowedActions(problem: DecisionProblem, state: DecisionState): readonly Action[] {
  const { tests, repairs, limits } = problem;
  const { money = Infinity, minutes = Infinity } = limits;
  const isAffordable = (cost: StepCost): boolean =>
    state.spent.money + cost.money <= money && state.spent.minutes + cost.minutes <= minutes;
  const isLimited = money < Infinity || minutes < Infinity;
  const actions: Action[] = [];
  for (let test = 0; test < tests.length; test += 1) {
    if (state.closedTests[test] === 1 || !isOpenTo(problem, state.evidence, test)) continue;
    if (isEngineApart(problem, test, state.open)) continue;
    if (!isLimited || isAffordable(expectedTestCost(problem, state, test))) actions.push({ kind: 'test', test });
  }
  for (let repair = 0; repair < repairs.length; repair += 1) {
    if (state.tried.includes(repair) || chanceOfCure(problem, state, repair) === 0) continue;
    if (!isLimited || isAffordable(problem.repairCost(repair, state.open))) actions.push({ kind: 'repair', repair });
  }
  actions.push(REFER);
  return actions;
}

/** Whether a test can be done after these results: it follows none, or one of them. */
export function isOpenTo({ tests }: DecisionProblem, { results }: EvidenceSet, test: number): boolean {
  const { follows } = tests[test]!;
  return (
    follows.length === 0 ||
    results.some((result) => follows.some((look) => look.test === result.test && look.outcome === result.outcome))
  );
}

/** Probability that a repair cures the fault. */
export function chanceOfCure(problem: DecisionProblem, { posterior }: DecisionState, repair: number): number {
  let chance = 0;
  for (const { cause, success } of problem.repairFacts.cures[repair]!) chance += posterior[cause]! * success;
  return chance;
}
