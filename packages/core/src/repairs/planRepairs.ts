import { costsFrom, kindsOfCauses, type KindsOfCauses, type RepairCosts } from './repairCosts.ts';
import type { RepairFacts } from './repairFacts.ts';

/** A sequence of repairs, by index, each followed by a check; then referral. `expectedCost` as a plain number, with what openings that
 * prove needless count for beyond their price. */
export interface RepairSequence {
  readonly repairs: readonly number[];
  readonly expectedCost: number;
}

/** Repair work made ready for one tariff, so that thousands of beliefs can be asked. Costs include the check. */
export interface RepairWork extends KindsOfCauses {
  readonly facts: RepairFacts;
  readonly cures: RepairFacts['cures'];
  /** Repairs that may be tried, by index; the referral is not one of them. */
  readonly candidates: Int32Array;
  readonly closed: RepairCosts;
  /** Cost of each repair as the first step, by what is open then (access bits). Filled as asked. */
  readonly first: Map<number, RepairCosts>;
  /** cause -> fee of the referral and then the right repair from a closed engine. */
  readonly referralCost: Float64Array;
  /** Scratch. Probability not yet cured, by cause. */
  readonly remaining: Float64Array;
  /** The same by kind of cause. */
  readonly remainingOfKind: Float64Array;
  /** Repairs by falling probability over cost, and that rank; the sequence under trial, and the ranks that are left in it. */
  readonly order: Int32Array;
  readonly rank: Float64Array;
  /** What a rank can be at most: chance over price alone. */
  readonly most: Float64Array;
  readonly sequence: Int32Array;
  readonly left: Float64Array;
}

/** Costs that do not change during a search. */
export function compileRepairs(facts: RepairFacts): RepairWork {
  const { cures, candidates, referralCost } = facts;
  const byKind = kindsOfCauses(facts);
  const closed = costsFrom(facts, byKind.kinds, 0);
  return {
    facts,
    cures,
    candidates: Int32Array.from(candidates),
    closed,
    first: new Map([[0, closed]]),
    ...byKind,
    referralCost,
    remaining: new Float64Array(referralCost.length),
    remainingOfKind: new Float64Array(byKind.kinds.length),
    order: Int32Array.from(candidates),
    rank: new Float64Array(cures.length),
    most: new Float64Array(cures.length),
    sequence: Int32Array.from(candidates),
    left: new Float64Array(cures.length),
  };
}

/** The best sequence of repairs without any further test: tried by probability over cost, each checked, ended by a referral where
 * going on would cost more; none of `tried` again. The first repair profits from access that is open; every check closes the engine, so later ones start
 * from a closed one. A referral costs its fee and then the right repair. Repairs that cure the same causes are ranked by what earlier
 * ones left. O(repairs^2) when something is open, else about O(repairs log repairs).
 *
 * Where openings that prove needless count for more than their price, a repair's cost has that in it, on average over what is still
 * possible; p/C is a rule of thumb there.
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
  const { order, sequence, closed } = work;
  const count = orderByChanceOverCost(work, posterior, tried);
  const first = firstCosts(work, open);
  let least = evaluate(work, posterior, first, -1, count);
  let repairs = Array.from(sequence.subarray(0, least.length));
  for (let at = 1; at < count; at += 1) {
    const index = order[at]!;
    const isHelped = first.price[index]! < closed.price[index]! || first.needless[index] !== closed.needless[index];
    if (!isHelped) continue; // what is open does not help it: its place is where p/C puts it
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
  const { remaining, closed } = work;
  const first = firstCosts(work, open);
  begin(work, posterior);
  let left = 1;
  let cost = 0;
  repairs.forEach((index, at) => {
    cost += costNow(work, at === 0 ? first : closed, index, left);
    left -= attempt(work, index);
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
  const { candidates, order, rank, most, closed } = work;
  begin(work, posterior);
  let count = 0;
  for (const index of candidates) {
    if (tried.includes(index)) continue;
    let chance = 0;
    for (const { cause, success } of work.cures[index]!) chance += posterior[cause]! * success;
    if (chance === 0) continue;
    rank[index] = chancePerCost(chance, costNow(work, closed, index, 1));
    most[index] = chancePerCost(chance, closed.price[index]!);
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
  first: RepairCosts,
  firstRepair: number,
  count: number,
): { readonly cost: number; readonly length: number } {
  const { order, rank, sequence, left: ranksLeft, remaining, closed, referralCost, kindOf, remainingOfKind } = work;
  begin(work, posterior);
  ranksLeft.set(work.kinds.length > 1 ? work.most : rank);
  sequence.set(order);
  if (firstRepair >= 0) moveToFront(sequence, sequence.indexOf(firstRepair));
  let referral = 0;
  for (let c = 0; c < remaining.length; c += 1) referral += remaining[c]! * referralCost[c]!;
  let least = referral;
  let length = 0;
  let left = 1;
  let paid = 0;
  for (let at = 0; at < count; at += 1) {
    if (at > 0 || firstRepair < 0) settle(work, at, count, left);
    const index = sequence[at]!;
    if (ranksLeft[index] === 0) break; // nothing left that it could cure, nor those behind it
    paid += costNow(work, at === 0 ? first : closed, index, left);
    for (const { cause, success } of work.cures[index]!) {
      const part = remaining[cause]! * success;
      remaining[cause]! -= part;
      remainingOfKind[kindOf[cause]!]! -= part;
      left -= part;
      referral -= part * referralCost[cause]!;
    }
    if (paid + referral < least) [least, length] = [paid + referral, at + 1];
    if (paid >= least) break; // what is paid already can only grow
  }
  return { cost: least, length };
}

/** Puts the repair with the highest remaining chance over cost at `at`. Chances only fall, so an old rank is an upper bound: the front one is
 * ranked anew and moved back until it stays in front (lazy greedy, Minoux 1978). */
function settle(work: RepairWork, at: number, count: number, still: number): void {
  const { sequence, left, closed, kinds } = work;
  if (kinds.length > 1) return settleAmongKinds(work, at, count, still);
  for (;;) {
    const index = sequence[at]!;
    const needless = closed.needless[index]?.[0] ?? 0;
    const rank = chancePerCost(chanceNow(work, index), closed.price[index]! + needless);
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

/** The same where what an opening counts for depends on the cause: then ranks may rise as well, but never above chance over price. */
function settleAmongKinds(work: RepairWork, at: number, count: number, still: number): void {
  const { sequence, left, closed } = work;
  let best = at;
  let most = 0;
  for (let one = at; one < count; one += 1) {
    const index = sequence[one]!;
    if (left[index]! <= most) continue;
    const chance = chanceNow(work, index);
    left[index] = chancePerCost(chance, closed.price[index]!);
    if (left[index] <= most) continue;
    const isPlain = closed.needless[index] === undefined;
    const rank = isPlain ? left[index] : chancePerCost(chance, costNow(work, closed, index, still) / still);
    if (rank > most) [best, most] = [one, rank];
  }
  const index = sequence[best]!;
  for (let one = best; one > at; one -= 1) sequence[one] = sequence[one - 1]!;
  sequence[at] = index;
}

/** Chance that a repair cures what is still possible. */
function chanceNow({ cures, remaining }: RepairWork, index: number): number {
  let chance = 0;
  for (const { cause, success } of cures[index]!) chance += remaining[cause]! * success;
  return chance;
}

function moveToFront(sequence: Int32Array, from: number): void {
  const index = sequence[from]!;
  sequence.copyWithin(1, 0, from);
  sequence[0] = index;
}

function firstCosts(work: RepairWork, open: number): RepairCosts {
  const known = work.first.get(open);
  if (known !== undefined) return known;
  const costs = costsFrom(work.facts, work.kinds, open, work.closed);
  work.first.set(open, costs);
  return costs;
}

/** Nothing is cured yet. */
function begin({ remaining, remainingOfKind, kindOf, kinds }: RepairWork, posterior: Float64Array): void {
  remaining.set(posterior);
  if (kinds.length === 1) return;
  remainingOfKind.fill(0);
  for (let c = 0; c < posterior.length; c += 1) remainingOfKind[kindOf[c]!]! += posterior[c]!;
}

/** What a repair that is reached with probability `left` costs: its price, and what its openings count for if the cause is elsewhere. */
function costNow({ remainingOfKind, kinds }: RepairWork, costs: RepairCosts, index: number, left: number): number {
  let cost = left * costs.price[index]!;
  const needless = costs.needless[index];
  if (needless === undefined) return cost;
  if (kinds.length === 1) return cost + left * needless[0]!;
  for (let kind = 0; kind < needless.length; kind += 1) cost += remainingOfKind[kind]! * needless[kind]!;
  return cost;
}

/** Takes what a repair cures out of the remaining probability; returns how much that was. */
function attempt({ cures, remaining, remainingOfKind, kindOf }: RepairWork, index: number): number {
  let cured = 0;
  for (const { cause, success } of cures[index]!) {
    const part = remaining[cause]! * success;
    remaining[cause]! -= part;
    remainingOfKind[kindOf[cause]!]! -= part;
    cured += part;
  }
  return cured;
}
