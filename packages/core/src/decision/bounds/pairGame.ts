import type { DecisionProblem } from '../problem/decisionProblem.ts';
import { MARGIN, SPACING, upperWeight } from './oddsGrid.ts';
import { repairSlack } from './repairSlack.ts';
import { perfectInformation } from './perfectInformation.ts';
import { accessShares, type AccessShare } from './shareAccess.ts';

/** Pairs of configurations of different causes, each with the actions that can tell it apart or end it. Flat lists: pair -> its claims
 * -> their taps. A claim is what one action may take from the budgets of both members; what an action may take of a configuration's
 * money in all pairs together is a pool. */
export interface PairGame {
  /** Probabilities of the configurations at the start, positive. */
  readonly weight: Float64Array;
  readonly first: Int32Array;
  readonly second: Int32Array;
  /** pair -> its first claim; one entry more than pairs. Tests stand before repairs and the referral. */
  readonly claimsOf: Int32Array;
  /** claim -> pool of the first member, pool of the second. */
  readonly pools: Int32Array;
  /** claim -> its first tap; one entry more than claims. No taps: the action ends the confusion. */
  readonly tapsOf: Int32Array;
  /** A result moves the odds by `shift` points and a fraction; weights of both neighbours, times the result's probability. */
  readonly shift: Int16Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** Tests that can be done, by position: index and price with everything open. Pool of a test: position * configurations + one. */
  readonly tests: readonly { readonly test: number; readonly cost: number }[];
  readonly access: readonly AccessShare[];
  /** Money in every pool; those of tests are the price alone. */
  readonly budget: Float64Array;
}

const PARTNERS = 8;
// Weights are relative: what is ruled out must not divide by zero.
const LEAST_WEIGHT = 1e-12;
// Tests that hardly speak about a pair are left out of its choice: it may do without.
const LEAST_LOST = 0.03;

interface Asked {
  readonly test: number;
  readonly cost: number;
  readonly outcomes: number;
  readonly rows: Float64Array;
}

/** The pairs whose confusion is dearest at the start of a problem: for every configuration up to eight partners. */
export function pairGameOf(problem: DecisionProblem): PairGame {
  const { start, repairFacts } = problem;
  const { cause, weight: believed, outcomeGiven } = problem.configurations();
  const weight = believed.map((w) => Math.max(w, LEAST_WEIGHT));
  const count = weight.length;
  const tests = problem.tests.flatMap(({ outcomes }, test): Asked[] => {
    if (start.closedTests[test] === 1) return [];
    return [{ test, cost: problem.testCost(test, -1).money, outcomes: outcomes.length, rows: outcomeGiven(test) }];
  });
  const slack = repairSlack(problem);
  const repairs = problem.repairs.flatMap((_, repair) => {
    const touched = new Uint8Array(problem.causes.length);
    for (const cure of repairFacts.cures[repair]!) touched[cure.cause] = 1;
    return start.tried.includes(repair) ? [] : [{ touched, slack: slack[repair]! }];
  });
  const knowing = perfectInformation(problem)(0, start.tried);

  const actions = tests.length + repairs.length + 1;
  const budget = new Float64Array(actions * count);
  for (let h = 0; h < count; h += 1) {
    const c = cause[h]!;
    tests.forEach(({ cost }, at) => (budget[at * count + h] = cost));
    repairs.forEach((repair, at) => (budget[(tests.length + at) * count + h] = repair.slack[c]!));
    budget[(actions - 1) * count + h] = Math.max(0, repairFacts.referralCost[c]! - knowing[c]!);
  }

  const chosen = choosePairs(weight, cause, tests);
  const claimsOf = [0];
  const pools: number[] = [];
  const tapsOf = [0];
  const shift: number[] = [];
  const lower: number[] = [];
  const upper: number[] = [];
  for (const [a, b] of chosen) {
    const claim = (action: number): void => {
      pools.push(action * count + a, action * count + b);
      tapsOf.push(shift.length);
    };
    tests.forEach(({ rows, outcomes }, at) => {
      if (lost(rows, outcomes, a, b) < LEAST_LOST) return;
      for (let o = 0; o < outcomes; o += 1) {
        const [p, q] = [rows[a * outcomes + o]!, rows[b * outcomes + o]!];
        if (p <= 0 || q <= 0) continue;
        const points = Math.log(p / q) / SPACING;
        const whole = Math.floor(points);
        if (whole < -MARGIN || whole >= MARGIN) continue;
        const up = upperWeight(points - whole);
        shift.push(whole);
        lower.push(q * (1 - up));
        upper.push(q * up);
      }
      claim(at);
    });
    repairs.forEach(({ touched }, at) => {
      if (touched[cause[a]!] === 1 || touched[cause[b]!] === 1) claim(tests.length + at);
    });
    claim(actions - 1);
    claimsOf.push(tapsOf.length - 1);
  }
  return {
    weight,
    first: Int32Array.from(chosen, ([a]) => a),
    second: Int32Array.from(chosen, ([, b]) => b),
    claimsOf: Int32Array.from(claimsOf),
    pools: Int32Array.from(pools),
    tapsOf: Int32Array.from(tapsOf),
    shift: Int16Array.from(shift),
    lower: Float64Array.from(lower),
    upper: Float64Array.from(upper),
    tests: tests.map(({ test, cost }) => ({ test, cost })),
    access: accessShares(
      problem,
      tests.map(({ test }) => test),
      cause,
    ),
    budget,
  };
}

/** Total variation of two rows. */
function lost(rows: Float64Array, outcomes: number, a: number, b: number): number {
  let sum = 0;
  for (let o = 0; o < outcomes; o += 1) sum += Math.max(0, rows[a * outcomes + o]! - rows[b * outcomes + o]!);
  return sum;
}

/** Those that cost most to tell apart by their best test, weighed by how probable both are. */
function choosePairs(
  weight: Float64Array,
  cause: Int32Array,
  tests: readonly Asked[],
): readonly (readonly [number, number])[] {
  const count = weight.length;
  const roots = tests.map(({ rows }) => rows.map(Math.sqrt));
  const score = new Float64Array(count * count);
  for (let a = 0; a < count; a += 1) {
    for (let b = a + 1; b < count; b += 1) {
      if (cause[a] === cause[b]) continue;
      let dearness = 1e4;
      tests.forEach(({ cost, outcomes }, at) => {
        const root = roots[at]!;
        let kept = 0;
        for (let o = 0; o < outcomes; o += 1) kept += root[a * outcomes + o]! * root[b * outcomes + o]!;
        dearness = Math.min(dearness, cost / (1 - Math.min(1, kept) + 1e-6));
      });
      score[a * count + b] = score[b * count + a] = dearness;
    }
  }
  const chosen = new Set<number>();
  for (let a = 0; a < count; a += 1) {
    const rank = (b: number): number => score[a * count + b]! * Math.sqrt(weight[b]!);
    const partners = Array.from({ length: count }, (_, b) => b).filter((b) => rank(b) > 0);
    partners.sort((b, c) => rank(c) - rank(b));
    for (const b of partners.slice(0, PARTNERS)) chosen.add(Math.min(a, b) * count + Math.max(a, b));
  }
  return [...chosen].sort((a, b) => a - b).map((code) => [Math.floor(code / count), code % count] as const);
}
