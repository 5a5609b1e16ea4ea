/** A sequence of repairs, by index, each followed by a check; then referral. `expectedCost` as a plain number. */
export interface RepairSequence {
  readonly repairs: readonly number[];
  readonly expectedCost: number;
}

/** What repairs do and cost. */
export interface RepairFacts {
  /** repair -> the causes it cures and how surely. */
  readonly cures: readonly (readonly { readonly cause: number; readonly success: number }[])[];
  /** Repairs that may be tried, by index; the referral is not one of them. */
  readonly candidates: readonly number[];
  /** Cost of a repair and its check with this much access open (access bits). */
  readonly costFrom: (repair: number, open: number) => number;
  /** cause -> fee of the referral and then the right repair from a closed engine. */
  readonly referralCost: Float64Array;
}

/** Repair work made ready for one tariff, so that thousands of beliefs can be asked. Costs include the check. */
export interface RepairWork {
  readonly cures: RepairFacts['cures'];
  readonly costFrom: RepairFacts['costFrom'];
  /** Repairs that may be tried, by index; the referral is not one of them. */
  readonly candidates: Int32Array;
  readonly closedCost: Float64Array;
  /** Cost of each repair as the first step, by what is open then (access bits). Filled as asked. */
  readonly firstCost: Map<number, Float64Array>;
  /** cause -> fee of the referral and then the right repair from a closed engine. */
  readonly referralCost: Float64Array;
  /** Scratch. Probability not yet cured, by cause. */
  readonly remaining: Float64Array;
  /** Repairs by falling probability over cost, and that rank; the sequence under trial, and the ranks that are left in it. */
  readonly order: Int32Array;
  readonly rank: Float64Array;
  readonly sequence: Int32Array;
  readonly left: Float64Array;
}

/** Costs that do not change during a search. */
export function compileRepairs({ cures, candidates, costFrom, referralCost }: RepairFacts): RepairWork {
  const closedCost = Float64Array.from(cures, (_, index) => costFrom(index, 0));
  return {
    cures,
    costFrom,
    candidates: Int32Array.from(candidates),
    closedCost,
    firstCost: new Map([[0, closedCost]]),
    referralCost,
    remaining: new Float64Array(referralCost.length),
    order: Int32Array.from(candidates),
    rank: new Float64Array(cures.length),
    sequence: Int32Array.from(candidates),
    left: new Float64Array(cures.length),
  };
}

/** The best sequence of repairs without any further test: tried by probability over cost, each checked, ended by a referral where
 * going on would cost more; none of `tried` again. The first repair profits from access that is open; every check closes the engine, so later ones start
 * from a closed one. A referral costs its fee and then the right repair. Repairs that cure the same causes are ranked by what earlier
 * ones left. O(repairs^2) when something is open, else about O(repairs log repairs).
 *
 * Source: order by p/C: Kadane & Simon 1977, Annals of Statistics 5(2):237-255; Kalagnanam & Henrion 1988, UAI 4:271-281; expected
 * cost of repair and the service call: Heckerman, Breese & Rommelse 1995, CACM 38(3):49-57. Choosing the first repair by trial is ours;
 * with overlapping cures p/C is a good order, not always the best one (Langseth & Jensen 2003). */
export function planRepairs(
  work: RepairWork,
  posterior: Float64Array,
  open: number,
  tried: readonly number[] = [],
): RepairSequence {
  const { order, sequence, closedCost } = work;
  const count = orderByChanceOverCost(work, posterior, tried);
  const first = firstCosts(work, open);
  let least = evaluate(work, posterior, first, -1, count);
  let repairs = Array.from(sequence.subarray(0, least.length));
  for (let at = 1; at < count; at += 1) {
    const index = order[at]!;
    if (first[index]! >= closedCost[index]!) continue; // what is open does not help it: its place is where p/C puts it
    const tried = evaluate(work, posterior, first, index, count);
    if (tried.cost < least.cost) [least, repairs] = [tried, Array.from(sequence.subarray(0, tried.length))];
  }
  return { repairs, expectedCost: least.cost };
}

/** Expected cost of exactly this sequence, then referral, under any belief: linear in the posterior. */
export function costOfSequence(
  work: RepairWork,
  posterior: Float64Array,
  open: number,
  repairs: readonly number[],
): number {
  const { remaining, closedCost } = work;
  const first = firstCosts(work, open);
  remaining.set(posterior);
  let left = 1;
  let cost = 0;
  repairs.forEach((index, at) => {
    cost += left * (at === 0 ? first : closedCost)[index]!;
    left -= attempt(work, index, remaining);
  });
  for (let c = 0; c < remaining.length; c += 1) cost += remaining[c]! * work.referralCost[c]!;
  return cost;
}

// Below any price that can be told from nothing, far enough above the least double that a chance over it stays finite.
const LEAST_COST = 1e-290;

/** What the order is made by. A repair that costs nothing stands before every other while it can cure anything, the likelier one first;
 * 0/0 would be no place at all. */
function chancePerCost(chance: number, cost: number): number {
  return chance / Math.max(cost, LEAST_COST);
}

/** Sorts `work.order` by falling probability of cure over cost; returns how many repairs can cure anything. */
function orderByChanceOverCost(work: RepairWork, posterior: Float64Array, tried: readonly number[]): number {
  const { candidates, order, rank, closedCost } = work;
  let count = 0;
  for (const index of candidates) {
    if (tried.includes(index)) continue;
    let chance = 0;
    for (const { cause, success } of work.cures[index]!) chance += posterior[cause]! * success;
    if (chance === 0) continue;
    rank[index] = chancePerCost(chance, closedCost[index]!);
    let at = count;
    for (; at > 0 && rank[order[at - 1]!]! < rank[index]; at -= 1) order[at] = order[at - 1]!;
    order[at] = index;
    count += 1;
  }
  return count;
}

/** Least cost over the lengths of the sequence that starts with `firstRepair` (if any) and goes on by probability over cost, every
 * prefix ended by the referral. Leaves the sequence in `work.sequence`. */
function evaluate(
  work: RepairWork,
  posterior: Float64Array,
  first: Float64Array,
  firstRepair: number,
  count: number,
): { readonly cost: number; readonly length: number } {
  const { order, rank, sequence, left: ranksLeft, remaining, closedCost, referralCost } = work;
  remaining.set(posterior);
  ranksLeft.set(rank);
  sequence.set(order);
  if (firstRepair >= 0) moveToFront(sequence, sequence.indexOf(firstRepair));
  let referral = 0;
  for (let c = 0; c < remaining.length; c += 1) referral += remaining[c]! * referralCost[c]!;
  let least = referral;
  let length = 0;
  let left = 1;
  let paid = 0;
  for (let at = 0; at < count; at += 1) {
    if (at > 0 || firstRepair < 0) settle(work, at, count);
    const index = sequence[at]!;
    if (ranksLeft[index] === 0) break; // nothing left that it could cure, nor those behind it
    paid += left * (at === 0 ? first : closedCost)[index]!;
    for (const { cause, success } of work.cures[index]!) {
      const part = remaining[cause]! * success;
      remaining[cause]! -= part;
      left -= part;
      referral -= part * referralCost[cause]!;
    }
    if (paid + referral < least) [least, length] = [paid + referral, at + 1];
    if (paid >= least) break; // what is paid already can only grow
  }
  return { cost: least, length };
}

/** Puts the repair with the highest remaining chance over cost at `at`. Chances only fall, so an old rank is an upper bound: the front
 * one is ranked anew and moved back until it stays in front (lazy greedy, Minoux 1978). */
function settle({ cures, sequence, left, remaining, closedCost }: RepairWork, at: number, count: number): void {
  for (;;) {
    const index = sequence[at]!;
    let chance = 0;
    for (const { cause, success } of cures[index]!) chance += remaining[cause]! * success;
    const rank = chancePerCost(chance, closedCost[index]!);
    left[index] = rank;
    if (at + 1 >= count || !(left[sequence[at + 1]!]! > rank)) return;
    let to = at;
    while (to + 1 < count && left[sequence[to + 1]!]! > rank) {
      sequence[to] = sequence[to + 1]!;
      to += 1;
    }
    sequence[to] = index;
  }
}

function moveToFront(sequence: Int32Array, from: number): void {
  const index = sequence[from]!;
  sequence.copyWithin(1, 0, from);
  sequence[0] = index;
}

function firstCosts(work: RepairWork, open: number): Float64Array {
  const known = work.firstCost.get(open);
  if (known !== undefined) return known;
  const costs = work.closedCost.map((_, index) => work.costFrom(index, open));
  work.firstCost.set(open, costs);
  return costs;
}

/** Takes what a repair cures out of the remaining probability; returns how much that was. */
function attempt(work: RepairWork, index: number, remaining: Float64Array): number {
  let cured = 0;
  for (const { cause, success } of work.cures[index]!) {
    const part = remaining[cause]! * success;
    remaining[cause]! -= part;
    cured += part;
  }
  return cured;
}
