import { REFER, type Action } from '../problem/action.ts';
import type { DecisionProblem, DecisionState } from '../problem/decisionProblem.ts';
import { costOfSequence, planRepairs, compileRepairs, type RepairSequence } from '../repairs/planRepairs.ts';

/** Makes the plan without any further test from any state: repairs by probability over cost, as many as the limits allow, then the
 * referral. Its cost is exact and that of a feasible plan: never less than the optimum. */
export function makeFeasiblePlan(problem: DecisionProblem): (state: DecisionState) => RepairSequence {
  const work = compileRepairs(problem.repairFacts);
  const { limits, repairCost } = problem;
  const isLimited = limits.money !== undefined || limits.minutes !== undefined;
  return ({ posterior, open, tried, spent }) => {
    const plan = planRepairs(work, posterior, open, tried);
    if (!isLimited) return plan;
    let { money, minutes } = spent;
    let within = 0;
    for (const [at, repair] of plan.repairs.entries()) {
      const cost = repairCost(repair, at === 0 ? open : 0);
      money += cost.money;
      minutes += cost.minutes;
      if (money > (limits.money ?? Infinity) || minutes > (limits.minutes ?? Infinity)) break;
      within += 1;
    }
    const repairs = plan.repairs.slice(0, within);
    return { repairs, expectedCost: costOfSequence(work, posterior, open, repairs) };
  };
}

/** What a repair sequence does first. */
export function firstOf({ repairs: [repair] }: RepairSequence): Action {
  return repair === undefined ? REFER : { kind: 'repair', repair };
}
