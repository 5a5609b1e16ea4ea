import type { DecisionProblem, DecisionState } from '../problem/decisionProblem.ts';

/** Makes the cost that would be left if the cause were told for nothing: by cause, with what is open and what failed already. Never
 * more than the optimum, because knowing more never costs. Who knows the cause opens nothing needlessly: what such openings count for does not come into it.
 * Source: expected value of perfect information, Raiffa 1968, Decision Analysis. */
export function makePerfectInformation(
  problem: DecisionProblem,
): (open: number, tried: readonly number[]) => Float64Array {
  const costOf = makeCostOfKnownCause(problem);
  const known = new Map<string, Float64Array>();
  return (open, tried) => {
    const key = `${open}/${tried.join('.')}`;
    const row = known.get(key) ?? Float64Array.from(problem.causes, (_, cause) => costOf(cause, open, tried));
    known.set(key, row);
    return row;
  };
}

/** Makes the cost that is left where the cause is known. Only repairs that cure it matter: the best of them first, the next when it
 * failed, and the referral where that is cheaper. The first one profits from what is open. */
export function makeCostOfKnownCause(
  problem: DecisionProblem,
): (cause: number, open: number, tried: readonly number[]) => number {
  const { repairFacts, causes } = problem;
  const curing = causes.map((_, cause) =>
    repairFacts.cures.flatMap((cures, repair) => {
      const success = cures.find((cure) => cure.cause === cause)?.success ?? 0;
      return success > 0 ? [{ repair, success }] : [];
    }),
  );
  // the repairs that can cure a cause are few: their subsets are walked
  const closed = new Map<string, number>();
  const costOf = (cause: number, open: number, tried: readonly number[]): number => {
    const left = curing[cause]!.filter(({ repair }) => !tried.includes(repair));
    const key = open === 0 ? `${cause}:${left.map(({ repair }) => repair).join('.')}` : '';
    const known = open === 0 ? closed.get(key) : undefined;
    if (known !== undefined) return known;
    let least = repairFacts.referralCost[cause]!;
    for (const { repair, success } of left) {
      const cost = repairFacts.costFrom(repair, open);
      if (cost >= least) continue;
      const after = success < 1 ? (1 - success) * costOf(cause, 0, [...tried, repair]) : 0;
      least = Math.min(least, cost + after);
    }
    if (open === 0) closed.set(key, least);
    return least;
  };
  return costOf;
}

/** Expected cost if the cause were told now. */
export function costOfKnowing(byCause: Float64Array, { posterior }: DecisionState): number {
  let cost = 0;
  for (let c = 0; c < posterior.length; c += 1) cost += posterior[c]! * byCause[c]!;
  return cost;
}
