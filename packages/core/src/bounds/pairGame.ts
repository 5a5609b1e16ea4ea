import { runToEnd } from '../turns/runToEnd.ts';
import type { Turns } from '../turns/turns.ts';
import type { DecisionProblem } from '../problem/decisionProblem.ts';
import { MARGIN, SPACING, upperWeight } from './oddsGrid.ts';
import { makePerfectInformation } from './makePerfectInformation.ts';
import { repairSlack } from './repairSlack.ts';
import { accessShares, type AccessShare } from './shareAccess.ts';

/** What an action does to a pair: a test tells its members apart; a repair that failed leaves one of them less probable; everything else
 * ends the confusion. Weak tests hardly tell the members apart: they have no share of the money, what they lower is paid back. */
export const EFFECT = { test: 0, triesFirst: 1, triesSecond: 2, ends: 3, weakTest: 4 } as const;
/** Phases of a pair: nothing tried yet that may cure a member, something for the first, something for the second. After both, the bound
 * charges for the pair no more. */
export const PHASES = 3;

/** Pairs of configurations of different causes, each with the actions that can tell it apart or end it. Flat lists: pair -> its actions
 * -> their results. An action of a pair has a share of the budgets of both members; what an action of the problem may take of a
 * configuration's money in all pairs together is a pool. */
export interface PairGame {
  /** Probabilities of the configurations at the start, positive. */
  readonly weight: Float64Array;
  readonly first: Int32Array;
  readonly second: Int32Array;
  /** pair -> its first action; one entry more than pairs. Tests stand before repairs and the referral. */
  readonly actionsOf: Int32Array;
  /** action -> one of `EFFECT`. */
  readonly effect: Uint8Array;
  /** action -> phases in which it is to be chosen from, as bits. */
  readonly phases: Uint8Array;
  /** action -> pool of the first member, pool of the second. */
  readonly pools: Int32Array;
  /** action -> its first result; one entry more than actions. Those of a test stay in the phase, those of a repair lead to the phase of the
   * member it touched; a repair without any ends the confusion. */
  readonly resultsOf: Int32Array;
  /** A result moves the odds by `shift` points and a fraction; weights of both neighbours, times the result's probability. */
  readonly shift: Int16Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** Tests that can be done, by position: index and price with everything open. Pool of a test: position * configurations + one. */
  readonly tests: readonly { readonly test: number; readonly cost: number }[];
  readonly access: readonly AccessShare[];
  /** Money in every pool, opening of access left out where it is shared: before a repair touched the pool's configuration, after. */
  readonly budget: Float64Array;
  readonly budgetAfter: Float64Array;
}

/** Pairs between two occasions to stop, at most. */
export const PAIRS_PER_TURN = 100;

const PARTNERS = 8;
// Weights are relative: what is ruled out must not divide by zero.
const LEAST_WEIGHT = 1e-12;
// Total variation below which a test is weak.
const WEAK = 0.03;

interface Asked {
  readonly test: number;
  readonly cost: number;
  readonly outcomes: number;
  readonly rows: Float64Array;
}

/** The pairs whose confusion is dearest at the start of a problem: for every configuration up to eight partners. */
export function compilePairGame(problem: DecisionProblem): PairGame {
  return runToEnd(compilePairGameInTurns(problem));
}

/** The same, giving way after every few hundred pairs at most. */
export function* compilePairGameInTurns(problem: DecisionProblem): Turns<PairGame> {
  const { start, repairFacts } = problem;
  const { cause, weight: believed, outcomeGiven } = problem.configurations();
  const weight = believed.map((w) => Math.max(w, LEAST_WEIGHT));
  const count = weight.length;
  const tests = problem.tests.flatMap(({ outcomes }, test): Asked[] => {
    if (start.closedTests[test] === 1) return [];
    return [{ test, cost: problem.testCost(test, -1).money, outcomes: outcomes.length, rows: outcomeGiven(test) }];
  });
  const slack = repairSlack(problem);
  yield;
  const repairs = problem.repairs.flatMap((_, repair) => {
    const success = new Float64Array(problem.causes.length);
    for (const cure of repairFacts.cures[repair]!) success[cure.cause] = cure.success;
    return start.tried.includes(repair) ? [] : [{ repair, success, slack: slack[repair]! }];
  });

  const actionCount = tests.length + repairs.length + 1;
  const budget = new Float64Array(actionCount * count);
  const budgetAfter = new Float64Array(actionCount * count);
  const knowing = makePerfectInformation(problem)(0, start.tried);
  for (let h = 0; h < count; h += 1) {
    const c = cause[h]!;
    const put = (row: number, fresh: number, again: number): void => {
      budget[row * count + h] = finite(fresh);
      budgetAfter[row * count + h] = finite(again);
    };
    tests.forEach(({ cost }, at) => put(at, cost, cost));
    repairs.forEach((repair, at) => put(tests.length + at, repair.slack.fresh[c]!, repair.slack.again[c]!));
    // once a repair failed none may be left but the referral, which perfect information accounts for then
    put(actionCount - 1, Math.max(0, repairFacts.referralCost[c]! - knowing[c]!), 0);
  }

  const chosen = yield* choosePairs(weight, cause, tests);
  const actionsOf = [0];
  const effect: number[] = [];
  const phases: number[] = [];
  const pools: number[] = [];
  const resultsOf = [0];
  const shift: number[] = [];
  const lower: number[] = [];
  const upper: number[] = [];
  /** Moves the odds by a factor, with `chance` per unit of the second member; nothing is left where that leads off the grid. */
  const addResult = (logOdds: number, chance: number): void => {
    const points = logOdds / SPACING;
    const whole = Math.floor(points);
    if (!(whole >= -MARGIN && whole < MARGIN)) return;
    const up = upperWeight(points - whole);
    shift.push(whole);
    lower.push(chance * (1 - up));
    upper.push(chance * up);
  };
  for (const [a, b] of chosen) {
    const addAction = (row: number, what: number, possible: number): void => {
      pools.push(row * count + a, row * count + b);
      resultsOf.push(shift.length);
      effect.push(what);
      phases.push(possible);
    };
    tests.forEach(({ rows, outcomes }, at) => {
      const difference = totalVariation(rows, outcomes, a, b);
      if (difference === 0) return;
      for (let o = 0; o < outcomes; o += 1) {
        const [p, q] = [rows[a * outcomes + o]!, rows[b * outcomes + o]!];
        if (p > 0 && q > 0) addResult(Math.log(p / q), q);
      }
      if (difference < WEAK) addAction(at, EFFECT.weakTest, 0);
      else addAction(at, EFFECT.test, 0b111);
    });
    repairs.forEach(({ success, slack: { again } }, at) => {
      const [forFirst, forSecond] = [success[cause[a]!]!, success[cause[b]!]!];
      if (forFirst === 0 && forSecond === 0) return;
      const possible =
        0b001 + (again[cause[a]!] === Infinity ? 0 : 0b010) + (again[cause[b]!] === Infinity ? 0 : 0b100);
      if (forSecond === 0) addResult(Math.log(1 - forFirst), 1);
      if (forFirst === 0) addResult(-Math.log(1 - forSecond), 1 - forSecond);
      const what = forSecond === 0 ? EFFECT.triesFirst : forFirst === 0 ? EFFECT.triesSecond : EFFECT.ends;
      addAction(tests.length + at, what, possible);
    });
    addAction(actionCount - 1, EFFECT.ends, 0b111);
    actionsOf.push(resultsOf.length - 1);
    if (actionsOf.length % PAIRS_PER_TURN === 0) yield;
  }
  return {
    weight,
    first: Int32Array.from(chosen, ([a]) => a),
    second: Int32Array.from(chosen, ([, b]) => b),
    actionsOf: Int32Array.from(actionsOf),
    effect: Uint8Array.from(effect),
    phases: Uint8Array.from(phases),
    pools: Int32Array.from(pools),
    resultsOf: Int32Array.from(resultsOf),
    shift: Int16Array.from(shift),
    lower: Float64Array.from(lower),
    upper: Float64Array.from(upper),
    tests: tests.map(({ test, cost }) => ({ test, cost })),
    access: accessShares(
      problem,
      tests.map(({ test }) => problem.testAccess[test]!),
      repairs.map(({ repair }) => problem.repairAccess[repair]!),
      cause,
    ),
    budget,
    budgetAfter,
  };
}

// What cannot come has no price.
function finite(money: number): number {
  return money === Infinity ? 0 : money;
}

/** Total variation of two rows. */
function totalVariation(rows: Float64Array, outcomes: number, a: number, b: number): number {
  let sum = 0;
  for (let o = 0; o < outcomes; o += 1) sum += Math.max(0, rows[a * outcomes + o]! - rows[b * outcomes + o]!);
  return sum;
}

/** Those that cost most to tell apart by their best test, weighed by how probable both are. */
function* choosePairs(
  weight: Float64Array,
  cause: Int32Array,
  tests: readonly Asked[],
): Turns<readonly (readonly [number, number])[]> {
  const count = weight.length;
  const roots = tests.map(({ rows }) => rows.map(Math.sqrt));
  const score = new Float64Array(count * count);
  const scoreAll = (a: number): void => {
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
  };
  for (let a = 0; a < count; a += 1) {
    scoreAll(a);
    yield;
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
