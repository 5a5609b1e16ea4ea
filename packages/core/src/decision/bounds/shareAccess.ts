import type { DecisionProblem } from '../problem/decisionProblem.ts';

/** Who may share the price of one access. */
export interface AccessShare {
  readonly bit: number;
  readonly cost: number;
  /** Tests behind it, by position in the list asked. */
  readonly behind: readonly number[];
  /** configuration -> 1 where its repair does not profit from the access, so that its price is free to be shared. */
  readonly isFree: Uint8Array;
}

/** Accesses that are closed at the start and have a price, the outermost first. */
export function accessShares(
  problem: DecisionProblem,
  asked: readonly number[],
  cause: Int32Array,
): readonly AccessShare[] {
  const { accessCost, testAccess, repairAccess, repairFacts, start } = problem;
  return [...accessCost.keys()].flatMap((bit): AccessShare[] => {
    const cost = accessCost[bit]!;
    const behind = asked.flatMap((test, at) => ((testAccess[test]! & (1 << bit)) !== 0 ? [at] : []));
    if (cost <= 0 || behind.length === 0 || (start.open & (1 << bit)) !== 0) return [];
    const profits = new Uint8Array(problem.causes.length);
    repairFacts.cures.forEach((cures, repair) => {
      if ((repairAccess[repair]! & (1 << bit)) !== 0) for (const cure of cures) profits[cure.cause] = 1;
    });
    return [{ bit, cost, behind, isFree: Uint8Array.from(cause, (c) => 1 - profits[c]!) }];
  });
}

/** Takes from what tests cost too much (`over`, changed in place) what the price of the access before them covers, in proportion;
 * returns the parts covered. */
export function shareAccess(
  shares: readonly AccessShare[],
  over: readonly Float64Array[],
  weight: Float64Array,
): readonly { readonly at: number; readonly bit: number; readonly of: Float64Array }[] {
  return shares.flatMap(({ bit, cost, behind, isFree }) => {
    const part = new Float64Array(weight.length);
    for (let h = 0; h < part.length; h += 1) {
      if (isFree[h] === 0) continue;
      let sum = 0;
      for (const at of behind) sum += over[at]![h]!;
      if (sum > 0) part[h] = Math.min(1, (cost * weight[h]!) / sum);
    }
    return behind.flatMap((at) => {
      const row = over[at]!;
      const of = row.map((x, h) => x * part[h]!);
      for (let h = 0; h < row.length; h += 1) row[h]! -= of[h]!;
      return of.some((x) => x > 0) ? [{ at, bit, of }] : [];
    });
  });
}
