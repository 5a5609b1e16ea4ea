import type { CompiledModel } from '../model/compiledModel.ts';
import type { Tariff } from './tariff.ts';

/** A sequence of repairs, by index, each followed by a check; then referral. `expectedCost` as a plain number. */
export interface RepairSequence {
  readonly repairs: readonly number[];
  readonly expectedCost: number;
}

/** Repair work made ready for one tariff: costs from a closed engine, check included. */
export interface RepairWork {
  /** Repairs that may be tried, by index; the referral is not one of them. */
  readonly candidates: readonly number[];
  readonly closedCost: Float64Array;
  /** From a closed engine: the least cost of a repair that cures the cause, tried by whoever knows it. */
  readonly knownCost: Float64Array;
  readonly referralFee: number;
}

/** Costs that do not change during a search. */
export function prepareRepairs(compiled: CompiledModel, tariff: Tariff): RepairWork {
  const { repairs } = compiled.model;
  const referral = repairs.findIndex((repair) => repair.referral === true);
  const closedCost = Float64Array.from(repairs, (_, index) => tariff.repair(index, 0).total + tariff.check.total);
  const knownCost = new Float64Array(compiled.causes.length).fill(Infinity);
  compiled.cures.forEach((cures, index) => {
    if (index === referral) return;
    for (const { cause } of cures) knownCost[cause] = Math.min(knownCost[cause]!, closedCost[index]!);
  });
  return {
    candidates: repairs.map((_, index) => index).filter((index) => index !== referral),
    closedCost,
    // a cause that only the referral cures costs the referral and nothing known beyond it
    knownCost: knownCost.map((cost) => (cost === Infinity ? 0 : cost)),
    referralFee: tariff.repair(referral, 0).total,
  };
}

/** The best sequence of repairs without any further test: tried by probability over cost, each checked, ended by a referral where
 * going on would cost more. The first repair profits from access that is open; every check closes the engine, so later ones start
 * from a closed one. A referral costs its fee and then the right repair.
 *
 * Source: order by p/C: Kadane & Simon 1977, Annals of Statistics 5(2):237-255; Kalagnanam & Henrion 1988, UAI 4:271-281; expected
 * cost of repair and the service call: Heckerman, Breese & Rommelse 1995, CACM 38(3):49-57. Choosing the first repair by trial is ours. */
export function planRepairs(compiled: CompiledModel, tariff: Tariff, work: RepairWork, posterior: Float64Array, open: number): RepairSequence {
  const chance = (index: number): number => compiled.cures[index]!.reduce((sum, { cause, success }) => sum + posterior[cause]! * success, 0);
  const order = work.candidates
    .map((index) => ({ index, chance: chance(index) }))
    .filter((candidate) => candidate.chance > 0)
    .sort((a, b) => b.chance / work.closedCost[b.index]! - a.chance / work.closedCost[a.index]!)
    .map(({ index }) => index);

  let best = bestPrefix(compiled, tariff, work, posterior, open, order);
  for (const first of order) {
    if (first === order[0] || (tariff.repairAccess[first]! & open) === 0) continue;
    const tried = bestPrefix(compiled, tariff, work, posterior, open, [first, ...order.filter((index) => index !== first)]);
    if (tried.expectedCost < best.expectedCost) best = tried;
  }
  return best;
}

/** Expected cost of exactly this sequence, then referral, under any belief: linear in the posterior. */
export function costOfSequence(
  compiled: CompiledModel,
  tariff: Tariff,
  work: RepairWork,
  posterior: Float64Array,
  open: number,
  repairs: readonly number[],
): number {
  const remaining = Float64Array.from(posterior);
  let left = 1;
  let cost = 0;
  repairs.forEach((index, at) => {
    cost += left * stepCost(tariff, work, index, at, open);
    left -= attempt(compiled, index, remaining);
  });
  return cost + costOfReferral(work, remaining);
}

function bestPrefix(
  compiled: CompiledModel,
  tariff: Tariff,
  work: RepairWork,
  posterior: Float64Array,
  open: number,
  order: readonly number[],
): RepairSequence {
  const remaining = Float64Array.from(posterior);
  let left = 1;
  let paid = 0;
  let least = costOfReferral(work, remaining);
  let length = 0;
  order.forEach((index, at) => {
    paid += left * stepCost(tariff, work, index, at, open);
    left -= attempt(compiled, index, remaining);
    const total = paid + costOfReferral(work, remaining);
    if (total < least) [least, length] = [total, at + 1];
  });
  return { repairs: order.slice(0, length), expectedCost: least };
}

function stepCost(tariff: Tariff, work: RepairWork, index: number, at: number, open: number): number {
  return at === 0 && open !== 0 ? tariff.repair(index, open).total + tariff.check.total : work.closedCost[index]!;
}

/** Takes what a repair cures out of the remaining probability; returns how much that was. */
function attempt(compiled: CompiledModel, index: number, remaining: Float64Array): number {
  let cured = 0;
  for (const { cause, success } of compiled.cures[index]!) {
    const part = remaining[cause]! * success;
    remaining[cause]! -= part;
    cured += part;
  }
  return cured;
}

function costOfReferral(work: RepairWork, remaining: Float64Array): number {
  let cost = 0;
  for (let c = 0; c < remaining.length; c += 1) cost += remaining[c]! * (work.referralFee + work.knownCost[c]!);
  return cost;
}
