import type { DecisionProblem, DecisionState, EvidenceSet } from '../problem/decisionProblem.ts';
import type { LowerBound } from './lowerBound.ts';
import { GRID, interpolate } from './oddsGrid.ts';
import { pairBudgets, type PairBudgets } from './pairBudgets.ts';
import { compilePairGame, type PairGame } from './pairGame.ts';
import { pairStateOf, PAIR_STATES, REMEMBERED } from './pairStates.ts';
import { costOfKnowing, makePerfectInformation } from './makePerfectInformation.ts';

/** A lower bound that charges for telling causes apart: the cost of perfect information, plus for pairs of configurations of different
 * causes the least cost of ending the confusion of these two, each pair having its own part of the money of every action.
 *
 * Why it is admissible. The value of a pair is concave and falls by a test's result, or by an action that ends the confusion, by at most
 * what the pair has of that action's money. All parts together are no more than the action costs beyond what perfect information accounts
 * for, whichever configuration is true. So no action lowers the bound by more than it costs: the bound is a sub-solution of the
 * optimality equation and stays below the optimum everywhere, whatever the division of the money. A test can be done once only, so pairs
 * may have more of it than it costs: the rest is subtracted from the bound as long as the test is not done; and every pair remembers of a
 * few tests that they are done. An access is opened once for all tests and one repair behind it: its price is divided among them, and
 * their parts are subtracted while it stands open, not before. A repair that failed leaves its causes less probable, not gone.
 * What openings that prove needless count for beyond their price is left out: it is never negative, so a bound without it stays one.
 *
 * Source of the principle: approximate linear programming, de Farias & Van Roy 2003, Operations Research 51:850-865. The construction is
 * ours; see decisions/ of this package. */
export function makePairBound(
  problem: DecisionProblem,
  game: PairGame = compilePairGame(problem),
  budgets: PairBudgets = pairBudgets(game),
): LowerBound {
  const knowing = makePerfectInformation(problem);
  const { cause, outcomeGiven } = problem.configurations();
  const { repairFacts } = problem;
  const { weight, tests, access } = game;
  const { first, second, values, remembered } = worthKeeping(game, budgets);

  const known = new WeakMap<EvidenceSet, Weights>();
  const weightsAt = ({ evidence }: DecisionState): Weights => {
    const already = known.get(evidence);
    if (already !== undefined) return already;
    const now = weight.slice();
    for (const { test, outcome } of evidence.results) {
      const rows = outcomeGiven(test);
      const outcomes = problem.tests[test]!.outcomes.length;
      for (let h = 0; h < now.length; h += 1) now[h]! *= rows[h * outcomes + outcome]!;
    }
    const answer = { now, logs: now.map(Math.log) };
    known.set(evidence, answer);
    return answer;
  };
  const failures = new Map<string, Failures>();
  const failuresOf = (tried: readonly number[]): Failures => {
    const key = tried.join('.');
    const already = failures.get(key);
    if (already !== undefined) return already;
    const isTouched = new Uint8Array(problem.causes.length);
    const stays = new Float64Array(problem.causes.length).fill(1);
    for (const repair of tried) {
      if (problem.start.tried.includes(repair)) continue;
      for (const cure of repairFacts.cures[repair]!) {
        isTouched[cure.cause] = 1;
        stays[cure.cause]! *= 1 - cure.success;
      }
    }
    const answer = {
      isTouched: Uint8Array.from(cause, (c) => isTouched[c]!),
      stays: Float64Array.from(cause, (c) => stays[c]!),
      logs: Float64Array.from(cause, (c) => Math.log(stays[c]!)),
    };
    failures.set(key, answer);
    return answer;
  };

  const surcharges = budgets.testSurcharge.flatMap((of, at) => sparse(of, tests[at]!.test, 1) ?? []);
  const openParts = access.flatMap(({ bit, cost, behind, isFree }, k) =>
    behind.flatMap(([at], j) => {
      const of = budgets.accessPart[k]![j]!.map((x, h) => x * isFree[h]!);
      const part = sparse(of, tests[at!]?.test, cost);
      return part === undefined ? [] : [{ bit, ...part }];
    }),
  );
  return (state) => {
    const { now, logs } = weightsAt(state);
    const { isTouched, stays, logs: logsOfStaying } = failuresOf(state.tried);
    const negligible = NEGLIGIBLE * state.chance;
    let extra = 0;
    for (let p = 0; p < first.length; p += 1) {
      const [a, b] = [first[p]!, second[p]!];
      const phase = isTouched[a]! + 2 * isTouched[b]!;
      if (phase === BOTH) continue;
      const [ofFirst, ofSecond] = [now[a]! * stays[a]!, now[b]! * stays[b]!];
      // what is hardly believed any more is worth next to nothing, and leaving it out lowers the bound
      if (ofFirst < negligible || ofSecond < negligible) continue;
      const logOdds = logs[a]! + logsOfStaying[a]! - logs[b]! - logsOfStaying[b]!;
      let done = 0;
      for (let i = 0; i < REMEMBERED; i += 1) {
        const test = remembered[p * REMEMBERED + i]!;
        if (test >= 0 && state.closedTests[test] === 1) done |= 1 << i;
      }
      extra += interpolate(values, (p * PAIR_STATES + pairStateOf(phase, done)) * GRID, ofFirst, ofSecond, logOdds);
    }
    const payBack = ({ test, members, money }: Part): void => {
      if (test !== undefined && state.closedTests[test] === 1) return;
      for (let i = 0; i < members.length; i += 1) {
        const h = members[i]!;
        extra -= money[i]! * now[h]! * stays[h]!;
      }
    };
    for (const part of surcharges) payBack(part);
    if (state.open !== 0) for (const part of openParts) if ((state.open & (1 << part.bit)) !== 0) payBack(part);
    return costOfKnowing(knowing(state.open, state.tried), state) + Math.max(0, extra / state.chance);
  };
}

// Of a state's whole belief.
const NEGLIGIBLE = 1e-6;
// Repairs touched both members.
const BOTH = 3;

/** What configurations pay back as long as a test is not done, or always. */
interface Part {
  readonly test: number | undefined;
  readonly members: Int32Array;
  readonly money: Float64Array;
}

function sparse(of: Float64Array, test: number | undefined, factor: number): Part | undefined {
  const members = Int32Array.from(of.keys()).filter((h) => of[h]! > 0);
  return members.length === 0
    ? undefined
    : { test, members, money: Float64Array.from(members, (h) => factor * of[h]!) };
}

interface Weights {
  readonly now: Float64Array;
  readonly logs: Float64Array;
}

/** What failed repairs leave, by configuration. */
interface Failures {
  /** 1 where one of them may cure the cause. */
  readonly isTouched: Uint8Array;
  /** Chance that all of them fail, and its logarithm. */
  readonly stays: Float64Array;
  readonly logs: Float64Array;
}

const KEPT_SHARE = 0.995;

/** Pairs worth next to nothing at the start cost time at every state the bound is asked: they are let go. */
function worthKeeping(
  { weight, first, second, tests }: PairGame,
  { values, remembered }: PairBudgets,
): Pick<PairGame, 'first' | 'second'> & { readonly values: Float64Array; readonly remembered: Int32Array } {
  const worth = Array.from(first, (a, p) => {
    const b = second[p]!;
    return interpolate(values, p * PAIR_STATES * GRID, weight[a]!, weight[b]!, Math.log(weight[a]! / weight[b]!));
  });
  const order = worth.map((_, p) => p).sort((p, q) => worth[q]! - worth[p]!);
  let left = KEPT_SHARE * worth.reduce((sum, x) => sum + x, 0);
  const kept = order.filter((p) => {
    const isKept = left > 0;
    left -= worth[p]!;
    return isKept;
  });
  const size = PAIR_STATES * GRID;
  const grids = new Float64Array(kept.length * size);
  kept.forEach((p, k) => grids.set(values.subarray(p * size, (p + 1) * size), k * size));
  return {
    first: Int32Array.from(kept, (p) => first[p]!),
    second: Int32Array.from(kept, (p) => second[p]!),
    values: grids,
    remembered: Int32Array.from({ length: kept.length * REMEMBERED }, (_, i) => {
      const at = remembered[kept[Math.floor(i / REMEMBERED)]! * REMEMBERED + (i % REMEMBERED)]!;
      return at < 0 ? -1 : tests[at]!.test;
    }),
  };
}
