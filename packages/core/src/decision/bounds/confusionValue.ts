import type { Confusion } from './confusion.ts';
import { shareAccess } from './shareAccess.ts';

/** A choice of prices, as flows: what every pair is worth at the start, and who bears the tests that tell it apart. */
export interface ConfusionFlows {
  /** By pair: worth of its affinity and of its overlap at the start. */
  readonly affinity: Float64Array;
  readonly overlap: Float64Array;
  /** test -> by configuration, above 0: who leans away from bearing affinities. */
  readonly leans: readonly Float64Array[];
  /** test -> by pair, 0 to 1: the part of its overlap that the first bears. */
  readonly tilts: readonly Float64Array[];
}

/** What flows are worth at the start after all surcharges, and the surcharges times the weights. */
export interface ConfusionValue {
  readonly value: number;
  readonly affinityGradient: Float64Array;
  readonly overlapGradient: Float64Array;
  readonly loads: readonly Float64Array[];
  readonly testOver: readonly Float64Array[];
  readonly openOver: ReturnType<typeof shareAccess>;
  readonly repairOver: readonly Float64Array[];
  readonly over: Float64Array;
}

const SPREADS = [0.5, 1, 2, 4, 8, 16, 32, 64];

/** Weighs flows: their sum, less what tests, repairs and the referral do not bear. Concave in the flows; the gradients are of that. */
export function confusionValue(confusion: Confusion, flows: ConfusionFlows): ConfusionValue {
  const { count, weight, first, second, tests, access, referralSlack } = confusion;
  const { affinity, overlap, leans, tilts } = flows;
  const pairs = first.length;
  const affinityGradient = new Float64Array(pairs).fill(1);
  const overlapGradient = new Float64Array(pairs).fill(1);
  let value = 0;
  for (let p = 0; p < pairs; p += 1) value += affinity[p]! + overlap[p]!;

  const loads = tests.map(({ affinityLost, overlapLost }, at) => {
    const load = new Float64Array(count);
    const [lean, tilt] = [leans[at]!, tilts[at]!];
    for (let p = 0; p < pairs; p += 1) {
      const [a, b] = [first[p]!, second[p]!];
      const half = 0.5 * affinity[p]! * affinityLost[p]!;
      const lost = (overlap[p]! * overlapLost[p]!) / Math.min(weight[a]!, weight[b]!);
      load[a]! += (half * lean[b]!) / lean[a]! + tilt[p]! * lost * weight[a]!;
      load[b]! += (half * lean[a]!) / lean[b]! + (1 - tilt[p]!) * lost * weight[b]!;
    }
    return load;
  });
  const testOver = loads.map((row, at) => row.map((x, h) => Math.max(0, x - tests[at]!.cost * weight[h]!)));
  const openOver = shareAccess(access, testOver, weight);
  testOver.forEach((over, at) => {
    const { affinityLost, overlapLost } = tests[at]!;
    const [lean, tilt] = [leans[at]!, tilts[at]!];
    for (const x of over) value -= x;
    for (let p = 0; p < pairs; p += 1) {
      const [a, b] = [first[p]!, second[p]!];
      const least = Math.min(weight[a]!, weight[b]!);
      if (over[a]! > 0) {
        affinityGradient[p]! -= (0.5 * affinityLost[p]! * lean[b]!) / lean[a]!;
        overlapGradient[p]! -= (tilt[p]! * overlapLost[p]! * weight[a]!) / least;
      }
      if (over[b]! > 0) {
        affinityGradient[p]! -= (0.5 * affinityLost[p]! * lean[a]!) / lean[b]!;
        overlapGradient[p]! -= ((1 - tilt[p]!) * overlapLost[p]! * weight[b]!) / least;
      }
    }
  });

  const repairOver = confusion.repairs.map(({ cost, cured }) => {
    const { paid, spread } = payRepair(confusion, flows, cost, cured);
    for (const x of paid) value -= x;
    for (let p = 0; p < pairs; p += 1) {
      const [a, b] = [first[p]!, second[p]!];
      if (cured[a] === 0 && cured[b] === 0) continue;
      if (cured[a] === 1 && cured[b] === 1) {
        affinityGradient[p]! -= 1;
        overlapGradient[p]! -= 1;
        continue;
      }
      const other = cured[a] === 1 ? b : a;
      affinityGradient[p]! -= 0.5 / spread + (paid[other]! > 0 ? 0.5 * spread : 0);
      if (paid[other]! > 0) overlapGradient[p]! -= weight[other]! / Math.min(weight[a]!, weight[b]!);
    }
    return paid;
  });

  const over = new Float64Array(count);
  for (let p = 0; p < pairs; p += 1) {
    const [a, b] = [first[p]!, second[p]!];
    over[a]! += 0.5 * affinity[p]!;
    over[b]! += 0.5 * affinity[p]!;
    over[weight[a]! < weight[b]! ? a : b]! += overlap[p]!;
  }
  for (let h = 0; h < count; h += 1) over[h] = Math.max(0, over[h]! - referralSlack[h]!);
  for (const x of over) value -= x;
  for (let p = 0; p < pairs; p += 1) {
    const [a, b] = [first[p]!, second[p]!];
    affinityGradient[p]! -= 0.5 * (Number(over[a]! > 0) + Number(over[b]! > 0));
    overlapGradient[p]! -= Number(over[weight[a]! < weight[b]! ? a : b]! > 0);
  }
  return { value, affinityGradient, overlapGradient, loads, testOver, openOver, repairOver, over };
}

/** Who pays for the confusions that a repair ends: the cured themselves what others do not bear; any scaling of the cured against the
 * others is admissible, so the cheapest of a few is taken. */
function payRepair(
  { count, weight, first, second }: Confusion,
  { affinity, overlap }: ConfusionFlows,
  cost: number,
  cured: Uint8Array,
): { readonly paid: Float64Array; readonly spread: number } {
  const inside = new Float64Array(count);
  const between = new Float64Array(count);
  const overlaps = new Float64Array(count);
  for (let p = 0; p < first.length; p += 1) {
    const [a, b] = [first[p]!, second[p]!];
    if (cured[a] === 0 && cured[b] === 0) continue;
    const isInside = cured[a] === 1 && cured[b] === 1;
    const into = isInside ? inside : between;
    into[a]! += 0.5 * affinity[p]!;
    into[b]! += 0.5 * affinity[p]!;
    if (isInside) {
      inside[weight[a]! < weight[b]! ? a : b]! += overlap[p]!;
    } else {
      const other = cured[a] === 1 ? b : a;
      overlaps[other]! += (overlap[p]! * weight[other]!) / Math.min(weight[a]!, weight[b]!);
    }
  }
  let best = { paid: between, spread: 1 };
  let least = Infinity;
  for (const spread of SPREADS) {
    let total = 0;
    const paid = between.map((x, h) => {
      const one = cured[h] === 1 ? inside[h]! + x / spread : Math.max(0, x * spread + overlaps[h]! - cost * weight[h]!);
      total += one;
      return one;
    });
    if (total < least) [least, best] = [total, { paid, spread }];
  }
  return best;
}
