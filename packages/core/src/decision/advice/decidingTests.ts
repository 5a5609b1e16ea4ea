import type { DecisionProblem, DecisionState } from '../problem/decisionProblem.ts';
import type { Money } from '../cost/money.ts';
import { takeAction } from '../problem/takeAction.ts';

/** Tests that could bring a group of causes to a threshold. */
export interface DecidingTests {
  readonly tests: readonly string[];
  /** Price of all of them together, access included. */
  readonly price: Money;
  /** Probability that the threshold is reached if the cause is in the group. */
  readonly reachedIfTrue: number;
  /** Probability that it is reached if it is not. */
  readonly reachedIfFalse: number;
  /** `reachedIfTrue` is at least a half. */
  readonly isLikely: boolean;
}

const LONGEST = 3;
// Singles are all tried; longer sequences only from the tests that tell most about the group for their price.
const KEPT = 6;
const LIKELY = 0.5;
// The screen knows only the most probable configurations; what comes this close is judged exactly.
const SCREEN_SLACK = 0.05;
const JUDGED = 4;

/** The cheapest sequence of at most three tests outside a step that is likely (at least 1 in 2) to bring its causes to the threshold if
 * they are the fault; if none is, the one with the best chance. Searched among all single tests and the sequences of the six that
 * reach furthest for their price; screened on the most probable configurations, the figures of the answer are exact.
 * `undefined` when no test is left or none can get there. */
export function decidingTests(
  problem: DecisionProblem,
  belongs: (kind: 'test' | 'repair', index: number) => boolean,
  group: Uint8Array,
  threshold: number,
): DecidingTests | undefined {
  const { start, tests } = problem;
  const outside = tests
    .map((_, test) => test)
    .filter((test) => start.closedTests[test] === 0 && !belongs('test', test));
  const singles = outside.map((test) => ({ test, perMoney: separation(problem, test, group) }));
  singles.sort((a, b) => b.perMoney - a.perMoney);
  const kept = singles.slice(0, KEPT).map(({ test }) => test);
  const reach = screenOf(problem, group, threshold);
  const screened = [...outside.map((test) => [test]), ...subsets(kept, LONGEST)].map((sequence) => ({
    sequence,
    reached: reach(sequence),
    price: priceOfSequence(problem, sequence),
  }));
  const likely = screened.filter(({ reached }) => reached >= LIKELY - SCREEN_SLACK).sort((a, b) => a.price - b.price);
  const farthest = screened.filter(({ reached }) => reached > 0).sort((a, b) => b.reached - a.reached);
  let best: DecidingTests | undefined;
  for (const { sequence } of [...likely.slice(0, JUDGED), ...farthest.slice(0, 1)]) {
    const found = judge(problem, sequence, group, threshold);
    if (best === undefined || isBetter(found, best)) best = found;
    if (best.isLikely) break;
  }
  return best !== undefined && best.reachedIfTrue > 0 ? best : undefined;
}

/** Makes a quick estimate of the chance to reach the threshold if the cause is in the group, on the configurations alone. */
function screenOf(
  problem: DecisionProblem,
  group: Uint8Array,
  threshold: number,
): (sequence: readonly number[]) => number {
  const { cause, weight, outcomeGiven } = problem.configurations();
  const { posterior } = problem.start;
  const covered = new Float64Array(posterior.length);
  cause.forEach((c, h) => (covered[c]! += weight[h]!));
  const whole = weight.map((w, h) => (w * posterior[cause[h]!]!) / covered[cause[h]!]!);
  const isIn = Uint8Array.from(cause, (c) => group[c]!);
  const inGroup = (w: Float64Array): number => w.reduce((sum, x, h) => sum + x * isIn[h]!, 0);
  const now = inGroup(whole);
  const walk = (w: Float64Array, rest: readonly number[]): number => {
    const [test, ...others] = rest;
    if (test === undefined) {
      const inside = inGroup(w);
      return inside >= threshold * w.reduce((a, b) => a + b, 0) ? inside : 0;
    }
    const rows = outcomeGiven(test);
    const outcomes = problem.tests[test]!.outcomes.length;
    let reached = 0;
    for (let o = 0; o < outcomes; o += 1) {
      reached += walk(
        w.map((x, h) => x * rows[h * outcomes + o]!),
        others,
      );
    }
    return reached;
  };
  return (sequence) => (now > 0 ? walk(whole, sequence) / now : 0);
}

function priceOfSequence(problem: DecisionProblem, sequence: readonly number[]): number {
  let { open } = problem.start;
  let amount = 0;
  for (const test of sequence) {
    amount += problem.testCost(test, open).money;
    open |= problem.testAccess[test]!;
  }
  return amount;
}

function isBetter(a: DecidingTests, b: DecidingTests): boolean {
  if (a.isLikely !== b.isLikely) return a.isLikely;
  if (a.isLikely) return a.price.amount < b.price.amount;
  return a.reachedIfTrue > b.reachedIfTrue;
}

function subsets(of: readonly number[], longest: number): number[][] {
  return of.flatMap((first, at) => {
    const more = longest > 1 ? subsets(of.slice(at + 1), longest - 1) : [];
    return [...(longest < LONGEST ? [[first]] : []), ...more.map((rest) => [first, ...rest])];
  });
}

/** How far outcomes under the group differ from those under the others, for the price: total variation over money. */
function separation(problem: DecisionProblem, test: number, group: Uint8Array): number {
  const { posterior, evidence, open } = problem.start;
  const table = problem.outcomeTable(evidence, test);
  const outcomes = problem.tests[test]!.outcomes.length;
  const mass = [0, 0];
  const shown = [new Float64Array(outcomes), new Float64Array(outcomes)];
  posterior.forEach((p, c) => {
    mass[group[c]!]! += p;
    for (let o = 0; o < outcomes; o += 1) shown[group[c]!]![o]! += p * table[c * outcomes + o]!;
  });
  let distance = 0;
  for (let o = 0; o < outcomes; o += 1) distance += Math.abs(shown[1]![o]! / mass[1]! - shown[0]![o]! / mass[0]!);
  return distance / Math.max(problem.testCost(test, open).money, 1e-9);
}

function judge(
  problem: DecisionProblem,
  sequence: readonly number[],
  group: Uint8Array,
  threshold: number,
): DecidingTests {
  const inGroup = (posterior: Float64Array): number => posterior.reduce((sum, p, c) => sum + p * group[c]!, 0);
  let reachedTrue = 0;
  let reachedFalse = 0;
  const walk = (state: DecisionState, reached: number, rest: readonly number[]): void => {
    const [test, ...others] = rest;
    if (test === undefined || state.closedTests[test] === 1) {
      const p = inGroup(state.posterior);
      if (p < threshold) return;
      reachedTrue += reached * p;
      reachedFalse += reached * (1 - p);
      return;
    }
    for (const { probability, state: then } of takeAction(problem, state, { kind: 'test', test }).branches) {
      if (then !== undefined) walk(then, reached * probability, others);
    }
  };
  walk(problem.start, 1, sequence);
  const now = inGroup(problem.start.posterior);
  const reachedIfTrue = Math.min(1, reachedTrue / now);
  return {
    tests: sequence.map((test) => problem.tests[test]!.id),
    price: { amount: priceOfSequence(problem, sequence), currency: problem.currency },
    reachedIfTrue,
    reachedIfFalse: Math.min(1, reachedFalse / (1 - now)),
    isLikely: reachedIfTrue >= LIKELY,
  };
}
