import { expectedOverOutcomes } from './expectedOverOutcomes.ts';
import { countedFor } from './needlessOpenings.ts';
import { planRepairs, type RepairWork } from './planRepairs.ts';

/** A test that a result calls for, ready to be valued. */
export interface FollowUpFacts {
  readonly index: number;
  /** Price in the state the look leaves, opening and closing included. */
  readonly cost: number;
  /** Access it opens in that state, as bits. */
  readonly opens: number;
  /** Access open after it, as bits. */
  readonly open: number;
  /** P(outcome | cause, everything known with the result) at [cause * outcomes + outcome]. */
  readonly table: Float64Array;
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
  for (const { index, cost, opens, open: openAfter, table } of followUps) {
    const after = (then: Float64Array): number => planRepairs(work, then, openAfter, failed).expectedCost;
    const counted = cost + countedFor(work.facts.needless, opens, posterior);
    const expectedCost = counted + expectedOverOutcomes(posterior, table, after);
    if (expectedCost < best.expectedCost) best = { expectedCost, followUp: index };
  }
  return best;
}
