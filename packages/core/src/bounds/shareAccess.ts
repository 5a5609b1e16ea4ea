import type { DecisionProblem } from '../problem/decisionProblem.ts';

/** Who may share the price of one access. */
export interface AccessShare {
  readonly bit: number;
  readonly cost: number;
  /** Who has a part: every test behind it for itself, all repairs behind it together, since the check after one closes it again. */
  readonly behind: readonly (readonly number[])[];
  /** configuration -> 1 where its repair does not profit from the access, so that its price is free to be shared. */
  readonly isFree: Uint8Array;
}

/** Accesses that are closed at the start and have a price, the outermost first. `tests` and `repairs`: access bits of those asked; the
 * repairs' positions follow those of the tests. */
export function accessShares(
  problem: DecisionProblem,
  tests: readonly number[],
  repairs: readonly number[],
  cause: Int32Array,
): readonly AccessShare[] {
  const { accessCost, start } = problem;
  const profiting = profitsOf(problem);
  return [...accessCost.keys()].flatMap((bit): AccessShare[] => {
    const cost = accessCost[bit]!;
    const isBehind = (need: number): boolean => (need & (1 << bit)) !== 0;
    const together = repairs.flatMap((need, at) => (isBehind(need) ? [tests.length + at] : []));
    const behind = tests.flatMap((need, at) => (isBehind(need) ? [[at]] : []));
    if (together.length > 0) behind.push(together);
    if (cost <= 0 || behind.length === 0 || (start.open & (1 << bit)) !== 0) return [];
    return [{ bit, cost, behind, isFree: Uint8Array.from(cause, (c) => Number(!isBehind(profiting[c]!))) }];
  });
}

/** By cause, the accesses that a repair of it needs, as bits. */
export function profitsOf({ causes, repairAccess, repairFacts }: DecisionProblem): readonly number[] {
  const bits = causes.map(() => 0);
  repairFacts.cures.forEach((cures, repair) => {
    for (const { cause } of cures) bits[cause]! |= repairAccess[repair]!;
  });
  return bits;
}
