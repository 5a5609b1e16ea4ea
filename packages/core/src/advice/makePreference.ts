import { isEngineApart, openAfterTest } from '../problem/openAfterTest.ts';
import { expectedTestCost } from '../problem/expectedTestCost.ts';
import type { DecisionProblem } from '../problem/decisionProblem.ts';
import { costAfterLook, type FollowUpFacts } from '../repairs/costAfterLook.ts';
import { countedFor } from '../repairs/needlessOpenings.ts';
import { expectedOverOutcomes } from '../repairs/expectedOverOutcomes.ts';
import { costOfSequence, planRepairs, compileRepairs } from '../repairs/planRepairs.ts';

/** Makes the margin between the best way to go on without a step and the best way that begins with it, one step ahead, for any belief:
 * 0 or less where the step is best. Likelihoods stay those of the evidence at the start; only the probabilities of the causes vary.
 * A step is a set of tests and repairs (everything behind an access, say). */
export function makePreference(
  problem: DecisionProblem,
  belongs: (kind: 'test' | 'repair', index: number) => boolean,
): (posterior: Float64Array) => number {
  const { tests, repairs, start } = problem;
  const { open, tried, evidence } = start;
  const work = compileRepairs(problem.repairFacts);
  const possible = tests
    .map((_, test) => test)
    .filter(
      (test) =>
        start.closedTests[test] === 0 && tests[test]!.follows.length === 0 && !isEngineApart(problem, test, open),
    );
  const followUpsOf = (test: number, outcome: number, opened: number): FollowUpFacts[] =>
    tests.flatMap(({ follows }, index) => {
      if (!follows.some((look) => look.test === test && look.outcome === outcome)) return [];
      const { money: cost } = problem.testCost(index, opened);
      const table = problem.outcomeTable(problem.evidenceAfter(evidence, test, outcome), index);
      const opens = problem.testAccess[index]! & ~opened;
      return [{ index, cost, opens, open: openAfterTest(problem, index, opened), table }];
    });
  return (posterior) => {
    let within = Infinity;
    let without = posterior.reduce((sum, p, c) => sum + p * problem.repairFacts.referralCost[c]!, 0);
    const count = (isWithin: boolean, cost: number): void => {
      if (isWithin) within = Math.min(within, cost);
      else without = Math.min(without, cost);
    };
    const order = planRepairs(work, posterior, open, tried).repairs;
    repairs.forEach((_, repair) => {
      if (tried.includes(repair)) return;
      const sequence = [repair, ...order.filter((other) => other !== repair)];
      count(belongs('repair', repair), costOfSequence(work, posterior, open, sequence));
    });
    for (const test of possible) {
      const table = problem.outcomeTable(evidence, test);
      const openAfter = openAfterTest(problem, test, open);
      const after = (then: Float64Array, outcome: number): number =>
        costAfterLook(work, then, openAfter, tried, followUpsOf(test, outcome, openAfter)).expectedCost;
      const counted = countedFor(problem.repairFacts.needless, problem.testAccess[test]! & ~open, posterior);
      const { money } = expectedTestCost(problem, { open, posterior }, test);
      const cost = money + counted + expectedOverOutcomes(posterior, table, after);
      count(belongs('test', test), cost);
    }
    return within - without;
  };
}
