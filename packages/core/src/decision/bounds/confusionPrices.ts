import { confusionOf, type Confusion } from './confusion.ts';
import { confusionValue, type ConfusionFlows, type ConfusionValue } from './confusionValue.ts';
import type { DecisionProblem } from '../problem/decisionProblem.ts';

/** Prices of confusion, chosen for one belief and valid for all: see `confusionBound`. Arrays run over configurations or pairs. */
export interface ConfusionPrices {
  readonly first: Int32Array;
  readonly second: Int32Array;
  /** Price of a pair times the root of the product of its probabilities, and times the lesser of them. */
  readonly affinityWorth: Float64Array;
  readonly overlapWorth: Float64Array;
  /** test -> what a configuration pays back as long as the test is not done (each can be done once only). */
  readonly testSurcharge: ReadonlyMap<number, Float64Array>;
  /** The same, as long as the test is not done and the access (by bit position) stands open, not before. */
  readonly openSurcharge: readonly { readonly test: number; readonly access: number; readonly of: Float64Array }[];
  readonly repairSurcharge: ReadonlyMap<number, Float64Array>;
  /** What a configuration pays back always. */
  readonly surcharge: Float64Array;
}

const ROUNDS = 48;
const STEP = 0.5;
const LEANING = 0.1;
const TILTING = 0.1;
const LEAST = 1e-18;
// Start from a share of what every pair could carry alone.
const START_SHARE = 0.02;
const KEPT_SHARE = 0.97;

/** Chooses prices that make the bound large at the start of a problem, by multiplicative steps along the subgradient of the bound, which
 * is concave in them. Any prices are admissible; the best found are returned. */
export function confusionPrices(problem: DecisionProblem): ConfusionPrices {
  const confusion = confusionOf(problem);
  const flows = startingFlows(confusion);
  let best = { value: 0, flows: copyOf(startingFlows(confusion, 0)) };
  for (let round = 0; round < ROUNDS; round += 1) {
    const now = confusionValue(confusion, flows);
    if (now.value > best.value) best = { value: now.value, flows: copyOf(flows) };
    shiftBurdens(confusion, flows, now);
    const step = STEP / Math.sqrt(1 + round / 4);
    climb(flows.affinity, now.affinityGradient, step);
    climb(flows.overlap, now.overlapGradient, step);
  }
  return pricesOf(confusion, best.flows);
}

/** Pairs that carry next to nothing cost time at every place the bound is asked: they are let go. */
function thinOut(flow: Float64Array): Float64Array {
  const sorted = flow.toSorted((a, b) => b - a);
  const total = sorted.reduce((a, b) => a + b, 0);
  let kept = 0;
  let least = 0;
  for (const x of sorted) {
    if (kept >= KEPT_SHARE * total) break;
    kept += x;
    least = x;
  }
  return flow.map((x) => (x >= least ? x : 0));
}

function climb(flow: Float64Array, gradient: Float64Array, step: number): void {
  for (let p = 0; p < flow.length; p += 1) {
    flow[p]! *= Math.exp(step * Math.max(-1, Math.min(1, gradient[p]!)));
  }
}

function startingFlows({ count, weight, first, second, tests }: Confusion, share = START_SHARE): ConfusionFlows {
  const room = (lost: (at: number) => Float64Array): Float64Array =>
    Float64Array.from(first, (a, p) => {
      const least = Math.min(weight[a]!, weight[second[p]!]!);
      let most = tests.length === 0 ? 0 : Infinity;
      for (let at = 0; at < tests.length; at += 1) {
        most = Math.min(most, (tests[at]!.cost * least) / (lost(at)[p]! + 1e-3));
      }
      return share * most;
    });
  const tilt = Float64Array.from(first, (a, p) => (weight[a]! < weight[second[p]!]! ? 1 : 0));
  return {
    affinity: room((at) => tests[at]!.affinityLost),
    overlap: room((at) => tests[at]!.overlapLost),
    leans: tests.map(() => new Float64Array(count).fill(1)),
    tilts: tests.map(() => tilt.slice()),
  };
}

/** Whoever bears too much of a test hands some of it to those who have room. */
function shiftBurdens(
  { first, second, weight, tests, count }: Confusion,
  flows: ConfusionFlows,
  { loads, testOver }: ConfusionValue,
): void {
  tests.forEach(({ cost, affinityLost }, at) => {
    const [lean, tilt, load, over] = [flows.leans[at]!, flows.tilts[at]!, loads[at]!, testOver[at]!];
    const push = new Float64Array(count);
    for (let p = 0; p < first.length; p += 1) {
      const [a, b] = [first[p]!, second[p]!];
      const half = 0.5 * flows.affinity[p]! * affinityLost[p]!;
      const tooMuchA = Number(load[a]! > cost * weight[a]!);
      const tooMuchB = Number(load[b]! > cost * weight[b]!);
      const moved = (tooMuchA * half * lean[b]!) / lean[a]! - (tooMuchB * half * lean[a]!) / lean[b]!;
      push[a]! += moved;
      push[b]! -= moved;
      const burdenA = over[a]! > 0 ? weight[a]! : 0;
      const burdenB = over[b]! > 0 ? weight[b]! : 0;
      const shift = (TILTING * (burdenB - burdenA)) / (weight[a]! + weight[b]!);
      tilt[p] = Math.max(0, Math.min(1, tilt[p]! + shift));
    }
    for (let h = 0; h < count; h += 1) {
      const scale = load[h]! + cost * weight[h]! + LEAST;
      lean[h]! *= Math.exp(LEANING * Math.max(-1, Math.min(1, push[h]! / scale)));
    }
  });
}

function copyOf({ affinity, overlap, leans, tilts }: ConfusionFlows): ConfusionFlows {
  return {
    affinity: affinity.slice(),
    overlap: overlap.slice(),
    leans: leans.map((lean) => lean.slice()),
    tilts: tilts.map((tilt) => tilt.slice()),
  };
}

function pricesOf(confusion: Confusion, found: ConfusionFlows): ConfusionPrices {
  const flows = { ...found, affinity: thinOut(found.affinity), overlap: thinOut(found.overlap) };
  const { first, second, weight, tests, repairs } = confusion;
  const { testOver, openOver, repairOver, over } = confusionValue(confusion, flows);
  const perWeight = (of: Float64Array): Float64Array => of.map((x, h) => (x > 0 ? x / weight[h]! : 0));
  const priced = (list: readonly Float64Array[], ids: readonly number[]): Map<number, Float64Array> =>
    new Map(list.flatMap((row, at) => (row.some((x) => x > 0) ? [[ids[at]!, perWeight(row)] as const] : [])));
  const kept = Int32Array.from(first, (_, p) => p).filter((p) => flows.affinity[p]! > 0 || flows.overlap[p]! > 0);
  const a = kept.map((p) => first[p]!);
  const b = kept.map((p) => second[p]!);
  return {
    first: a,
    second: b,
    affinityWorth: Float64Array.from(kept, (p, k) => flows.affinity[p]! / Math.sqrt(weight[a[k]!]! * weight[b[k]!]!)),
    overlapWorth: Float64Array.from(kept, (p, k) => flows.overlap[p]! / Math.min(weight[a[k]!]!, weight[b[k]!]!)),
    testSurcharge: priced(
      testOver,
      tests.map(({ test }) => test),
    ),
    openSurcharge: openOver.map(({ at, bit, of }) => ({ test: tests[at]!.test, access: bit, of: perWeight(of) })),
    repairSurcharge: priced(
      repairOver,
      repairs.map(({ repair }) => repair),
    ),
    surcharge: perWeight(over),
  };
}
