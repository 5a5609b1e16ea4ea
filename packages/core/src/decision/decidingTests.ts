import type { DecisionProblem, DecisionState } from './decisionProblem.ts';
import type { Money } from './money.ts';
import { takeAction } from './takeAction.ts';

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

/** The cheapest sequence of at most three tests outside a step that is likely (at least 1 in 2) to bring its causes to the threshold if
 * they are the fault; if none is, the one with the best chance. Searched among all single tests and the sequences of the six that
 * reach furthest for their price. `undefined` when no test is left or none can get there. */
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
  const rate = (sequence: readonly number[]): DecidingTests => judge(problem, sequence, group, threshold);
  const singles = outside.map((test) => ({ test, ...separation(problem, test, group) }));
  singles.sort((a, b) => b.perMoney - a.perMoney);
  const kept = singles.slice(0, KEPT).map(({ test }) => test);
  const sequences = [...outside.map((test) => [test]), ...subsets(kept, LONGEST)];
  let best: DecidingTests | undefined;
  for (const sequence of sequences) {
    const found = rate(sequence);
    if (best === undefined || isBetter(found, best)) best = found;
  }
  return best !== undefined && best.reachedIfTrue > 0 ? best : undefined;
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
function separation(problem: DecisionProblem, test: number, group: Uint8Array): { readonly perMoney: number } {
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
  return { perMoney: distance / Math.max(problem.testCost(test, open).money, 1e-9) };
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
  let open = problem.start.open;
  let amount = 0;
  for (const test of sequence) {
    amount += problem.testCost(test, open).money;
    open |= problem.testAccess[test]!;
  }
  const now = inGroup(problem.start.posterior);
  const reachedIfTrue = Math.min(1, reachedTrue / now);
  return {
    tests: sequence.map((test) => problem.tests[test]!.id),
    price: { amount, currency: problem.currency },
    reachedIfTrue,
    reachedIfFalse: Math.min(1, reachedFalse / (1 - now)),
    isLikely: reachedIfTrue >= 0.5,
  };
}
