import type { ProposedTest } from '../steps/proposedTest.ts';
import type { Money } from '../cost/money.ts';
import { openAfterTest } from '../problem/openAfterTest.ts';
import type { DecisionProblem } from '../problem/decisionProblem.ts';
import type { Cancel } from '../turns/cancel.ts';
import { runToEnd } from '../turns/runToEnd.ts';
import type { Turns } from '../turns/turns.ts';
import { untilAborted } from '../turns/untilAborted.ts';
import { judgeSequence } from './judgeSequence.ts';
import { makeSequenceScreen } from './makeSequenceScreen.ts';
import type { ThresholdQuestion } from './thresholdQuestion.ts';

/** Tests that could bring a group of causes to a threshold. */
export interface DecidingTests {
  /** In the order in which they are done: each opens what those before it left closed. */
  readonly tests: readonly ProposedTest[];
  /** Price of all of them together, access included. */
  readonly price: Money;
  /** Probability that the threshold is reached if the cause is in the group. */
  readonly reachedIfTrue: number;
  /** Probability that it is reached if it is not. */
  readonly reachedIfFalse: number;
  /** `reachedIfTrue` is at least a half. */
  readonly isLikely: boolean;
}

/** The question, and how long to look. */
export interface DecidingQuestion extends ThresholdQuestion {
  /** Whether a test belongs to the step itself: such tests decide nothing about it. */
  readonly belongs: (kind: 'test' | 'repair', index: number) => boolean;
  /** Sequences looked at, at most. Default 4000. */
  readonly evaluations?: number;
  readonly signal?: Cancel;
  /** Called with every better answer. */
  readonly onImprove?: (found: DecidingTests) => void;
}

/** What was found, and how much was not looked at. */
export interface DecidingSearch {
  /** `undefined` when no sequence that was looked at can get there. */
  readonly tests: DecidingTests | undefined;
  /** Sequences that were looked at, or cannot beat the answer at their price. */
  readonly examined: number;
  /** Sequences that were not. 0: nothing cheaper of at most three tests exists, as far as the quick look can tell. */
  readonly unexamined: number;
}

const LONGEST = 3;
const DEFAULT_EVALUATIONS = 4000;
const LIKELY = 0.5;
// The quick look knows only the most probable configurations; what comes this close is judged exactly.
const SLACK = 0.05;
// Sequences judged exactly per length, at most: each takes dozens of sweeps.
const JUDGED = 4;
const FARTHEST = 3;

interface Candidate {
  readonly sequence: readonly number[];
  readonly reached: number;
  readonly price: number;
}

/** The cheapest sequence of at most three tests outside a step that is likely (at least 1 in 2) to bring its causes to the threshold if
 * they are the fault; if none is, the one with the best chance. All single tests first, then pairs, then threes, those that tell most
 * about the group for their price first; what costs more than a likely answer is passed over. Every sequence gets a quick look on the
 * most probable configurations; the figures of the answer are exact. */
export function decidingTests(question: DecidingQuestion): DecidingSearch {
  return runToEnd(decidingTestsInTurns(question));
}

/** The same, giving way after every sequence looked at and after every test of one that is judged; aborted, it judges no more. */
export function* decidingTestsInTurns(question: DecidingQuestion): Turns<DecidingSearch> {
  const { problem, belongs, group, evaluations = DEFAULT_EVALUATIONS, signal, onImprove } = question;
  const { start } = problem;
  const outside = problem.tests
    .map((_, test) => test)
    .filter((test) => start.closedTests[test] === 0 && !belongs('test', test))
    // what follows another is done for its result, not for its own
    .filter((test) => problem.tests[test]!.follows.length === 0)
    .map((test) => ({ test, perMoney: separation(problem, test, group) }))
    .sort((a, b) => b.perMoney - a.perMoney)
    .map(({ test }) => test);
  const reach = makeSequenceScreen(question);
  let best: DecidingTests | undefined;
  let looked = 0;
  let passed = 0;
  let all = 0;
  for (let length = 1; length <= LONGEST; length += 1) {
    all += choose(outside.length, length);
    const candidates: Candidate[] = [];
    for (const sequence of subsets(outside, length)) {
      if (looked >= evaluations || signal?.aborted === true) break;
      const price = priceOfSequence(problem, sequence);
      if ((best?.isLikely === true && price >= best.price.amount) || answersAnother(problem, sequence)) {
        passed += 1;
        continue;
      }
      looked += 1;
      candidates.push({ sequence, price, reached: reach(sequence) });
      yield;
    }
    for (const { sequence, price } of shortList(candidates)) {
      if (best?.isLikely === true && price >= best.price.amount) continue;
      const amount = { amount: price, currency: problem.currency };
      const judged = yield* untilAborted(judgeSequence(question, sequence), signal);
      if (judged === undefined) break;
      const { reachedIfTrue, reachedIfFalse } = judged;
      const isLikely = reachedIfTrue >= LIKELY;
      const tests = proposed(problem, sequence);
      const found = { tests, price: amount, reachedIfTrue, reachedIfFalse, isLikely };
      if (!(reachedIfTrue > 0) || (best !== undefined && !isBetter(found, best))) continue;
      best = found;
      onImprove?.(best);
    }
  }
  return { tests: best, examined: looked + passed, unexamined: all - looked - passed };
}

/** What is worth an exact judgement: the cheapest that look likely, and those that look farthest. */
function shortList(candidates: readonly Candidate[]): readonly Candidate[] {
  const likely = candidates.filter(({ reached }) => reached >= LIKELY - SLACK).sort((a, b) => a.price - b.price);
  const far = candidates
    .filter(({ reached }) => reached > 0)
    .sort((a, b) => b.reached - a.reached || a.price - b.price);
  return [...new Set([...likely.slice(0, JUDGED), ...far.slice(0, FARTHEST)])];
}

function priceOfSequence(problem: DecisionProblem, sequence: readonly number[]): number {
  let { open } = problem.start;
  let amount = 0;
  for (const test of sequence) {
    amount += problem.testCost(test, open).money;
    open = openAfterTest(problem, test, open);
  }
  return amount;
}

function proposed(problem: DecisionProblem, sequence: readonly number[]): readonly ProposedTest[] {
  let { open } = problem.start;
  return sequence.map((test) => {
    const facts = problem.stepFacts({ kind: 'test', test }, open);
    open = openAfterTest(problem, test, open);
    return { test: problem.tests[test]!.id, ...facts };
  });
}

function answersAnother(problem: DecisionProblem, sequence: readonly number[]): boolean {
  return sequence.some((test) => problem.tests[test]!.answers.some((other) => sequence.includes(other)));
}

function isBetter(a: DecidingTests, b: DecidingTests): boolean {
  if (a.isLikely !== b.isLikely) return a.isLikely;
  if (a.isLikely) return a.price.amount < b.price.amount;
  return a.reachedIfTrue > b.reachedIfTrue;
}

/** All choices of `length` items, those from the front of the list first: their last item moves outward slowest. */
function* subsets(of: readonly number[], length: number): Generator<readonly number[]> {
  if (length === 0) yield [];
  for (let last = length - 1; last < of.length && length > 0; last += 1) {
    for (const rest of subsets(of.slice(0, last), length - 1)) yield [...rest, of[last]!];
  }
}

function choose(of: number, count: number): number {
  let ways = 1;
  for (let k = 0; k < count; k += 1) ways = (ways * (of - k)) / (k + 1);
  return Math.max(0, Math.round(ways));
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
