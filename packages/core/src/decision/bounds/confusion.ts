import { accessShares, type AccessShare } from './shareAccess.ts';
import type { DecisionProblem } from '../problem/decisionProblem.ts';
import { perfectInformation } from './perfectInformation.ts';

/** Pairs of configurations of different causes and what tells them apart, made ready for pricing. Arrays run over configurations
 * (`count`) or over pairs. */
export interface Confusion {
  readonly count: number;
  readonly weight: Float64Array;
  readonly first: Int32Array;
  readonly second: Int32Array;
  readonly tests: readonly {
    readonly test: number;
    /** With everything open. */
    readonly cost: number;
    /** By pair: 1 - sum of roots of products of likelihoods; 1 - sum of lesser likelihoods. */
    readonly affinityLost: Float64Array;
    readonly overlapLost: Float64Array;
  }[];
  readonly access: readonly AccessShare[];
  readonly repairs: readonly { readonly repair: number; readonly cost: number; readonly cured: Uint8Array }[];
  /** What a referral costs more than knowing, times the weight. */
  readonly referralSlack: Float64Array;
}

const EVERYTHING_OPEN = -1;
const PARTNERS = 16;
// Prices are relative to the weights: any positive ones are admissible, and what is ruled out must not divide by zero.
const LEAST_WEIGHT = 1e-12;

/** The pairs whose confusion is dearest at the start of a problem: for every configuration up to sixteen partners. */
export function confusionOf(problem: DecisionProblem): Confusion {
  const { repairFacts, start } = problem;
  const { cause, weight: believed, outcomeGiven } = problem.configurations();
  const weight = believed.map((w) => Math.max(w, LEAST_WEIGHT));
  const asked = problem.tests.flatMap(({ outcomes }, test) => {
    if (start.closedTests[test] === 1) return [];
    const rows = outcomeGiven(test);
    const { money: cost } = problem.testCost(test, EVERYTHING_OPEN);
    return [{ test, cost, outcomes: outcomes.length, rows, roots: rows.map(Math.sqrt) }];
  });
  const affinityLost = ({ roots, outcomes }: (typeof asked)[number], a: number, b: number): number => {
    let kept = 0;
    for (let o = 0; o < outcomes; o += 1) kept += roots[a * outcomes + o]! * roots[b * outcomes + o]!;
    return Math.max(0, 1 - kept);
  };
  const overlapLost = ({ rows, outcomes }: (typeof asked)[number], a: number, b: number): number => {
    let kept = 0;
    for (let o = 0; o < outcomes; o += 1) kept += Math.min(rows[a * outcomes + o]!, rows[b * outcomes + o]!);
    return Math.max(0, 1 - kept);
  };
  const { first, second } = choosePairs(cause, weight, (a, b) => {
    let dearness = 1e4;
    for (const one of asked) dearness = Math.min(dearness, one.cost / (affinityLost(one, a, b) + 1e-6));
    return dearness;
  });
  const byPair = (ask: (a: number, b: number) => number): Float64Array =>
    Float64Array.from(first, (a, p) => ask(a, second[p]!));
  const knowing = perfectInformation(problem)(0, start.tried);
  return {
    count: weight.length,
    weight,
    first,
    second,
    tests: asked.map((one) => ({
      test: one.test,
      cost: one.cost,
      affinityLost: byPair((a, b) => affinityLost(one, a, b)),
      overlapLost: byPair((a, b) => overlapLost(one, a, b)),
    })),
    access: accessShares(
      problem,
      asked.map(({ test }) => test),
      cause,
    ),
    repairs: problem.repairs.flatMap((_, repair) => {
      const causes = new Set(repairFacts.cures[repair]!.map((cure) => cure.cause));
      const cured = Uint8Array.from(cause, (c) => Number(causes.has(c)));
      if (start.tried.includes(repair) || !cured.includes(1)) return [];
      return [{ repair, cost: repairFacts.costFrom(repair, EVERYTHING_OPEN), cured }];
    }),
    referralSlack: Float64Array.from(
      cause,
      (c, h) => weight[h]! * Math.max(0, repairFacts.referralCost[c]! - knowing[c]!),
    ),
  };
}

function choosePairs(
  cause: Int32Array,
  weight: Float64Array,
  dearness: (a: number, b: number) => number,
): { readonly first: Int32Array; readonly second: Int32Array } {
  const count = weight.length;
  const score = new Float64Array(count * count);
  for (let a = 0; a < count; a += 1) {
    for (let b = a + 1; b < count; b += 1) {
      if (cause[a] !== cause[b]) score[a * count + b] = score[b * count + a] = dearness(a, b);
    }
  }
  const chosen = new Set<number>();
  for (let a = 0; a < count; a += 1) {
    const rank = (b: number): number => score[a * count + b]! * Math.sqrt(weight[b]!);
    const partners = Array.from({ length: count }, (_, b) => b).filter((b) => rank(b) > 0);
    partners.sort((b, c) => rank(c) - rank(b));
    for (const b of partners.slice(0, PARTNERS)) chosen.add(Math.min(a, b) * count + Math.max(a, b));
  }
  const list = [...chosen].sort((a, b) => a - b);
  return {
    first: Int32Array.from(list, (code) => Math.floor(code / count)),
    second: Int32Array.from(list, (code) => code % count),
  };
}
