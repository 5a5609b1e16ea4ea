import { costIfKnown, planRepairs, type RepairWork } from './planRepairs.ts';

/** A test that a result calls for, ready to be valued. */
export interface FollowUpFacts {
  readonly index: number;
  /** Price in the state the look leaves, opening and closing included. */
  readonly cost: number;
  /** Access open after it, as bits. */
  readonly open: number;
  readonly outcomes: number;
  /** P(outcome | cause, everything known with the result) at [cause * outcomes + outcome]; asked for only where the follow-up can pay. */
  readonly table: () => Float64Array;
}

/** Expected cost to a confirmed repair after the result of a look: by repairs alone, or, where that is cheaper, with one of the follow-ups
 * first and repairs after it. @returns the cost, and the index of the follow-up; -1 for none */
export function costAfterLook(
  work: RepairWork,
  posterior: Float64Array,
  open: number,
  failed: readonly number[],
  followUps: readonly FollowUpFacts[],
): { readonly expectedCost: number; readonly followUp: number } {
  let best = { expectedCost: planRepairs(work, posterior, open, failed).expectedCost, followUp: -1 };
  for (const { index, cost, open: openAfter, outcomes, table: makeTable } of followUps) {
    if (cost + costIfKnown(work, posterior, openAfter) >= best.expectedCost) continue;
    const table = makeTable();
    let expectedCost = cost;
    for (let o = 0; o < outcomes; o += 1) {
      const then = posterior.map((p, c) => p * table[c * outcomes + o]!);
      const chance = then.reduce((sum, p) => sum + p, 0);
      if (!(chance > 0)) continue;
      const plan = planRepairs(
        work,
        then.map((p) => p / chance),
        openAfter,
        failed,
      );
      expectedCost += chance * plan.expectedCost;
    }
    if (expectedCost < best.expectedCost) best = { expectedCost, followUp: index };
  }
  return best;
}
