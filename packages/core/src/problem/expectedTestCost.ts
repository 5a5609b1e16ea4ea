import type { DecisionProblem, DecisionState, StepCost } from './decisionProblem.ts';

/** What a test costs in a state on the average: made again where the first run finds the fault asleep. */
export function expectedTestCost(
  problem: DecisionProblem,
  { open, posterior }: Pick<DecisionState, 'open' | 'posterior'>,
  test: number,
): StepCost {
  const once = problem.testCost(test, open);
  const { asleep } = problem.tests[test]!;
  if (asleep === undefined) return once;
  let chance = 0;
  for (let c = 0; c < posterior.length; c += 1) chance += posterior[c]! * asleep.chance[c]!;
  return { money: once.money + chance * asleep.again.money, minutes: once.minutes + chance * asleep.again.minutes };
}
