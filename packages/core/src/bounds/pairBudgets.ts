import { runToEnd } from '../turns/runToEnd.ts';
import type { Turns } from '../turns/turns.ts';
import { certifyPair, chargeWeakTests } from './certifyPair.ts';
import { GRID, interpolate } from './oddsGrid.ts';
import { EFFECT, PAIRS_PER_TURN, type PairGame } from './pairGame.ts';
import { createPairWork, PAIR_STATES, REMEMBERED, rememberMostUsed } from './pairStates.ts';
import { solvePair, type Precision } from './solvePair.ts';
import { countUses } from './countUses.ts';

/** How the money of every action is divided among the pairs, and what the pairs are worth then. Chosen for one belief, valid for all. */
export interface PairBudgets {
  /** (pair * PAIR_STATES + state) * GRID + point: certified values per unit of the second member, see `interpolate`. */
  readonly values: Float64Array;
  /** pair * REMEMBERED + at: position of a test that is remembered once it is done, or -1. */
  readonly remembered: Int32Array;
  /** Test position -> by configuration, what is paid back as long as the test is not done (each can be done once only). */
  readonly testSurcharge: readonly Float64Array[];
  /** Access -> who has a part, by position in its list -> by configuration: paid back as long as the access is open and the test not
   * done. */
  readonly accessPart: readonly (readonly Float64Array[])[];
  /** Worth of all pairs at the start, less what is paid back. */
  readonly worth: number;
}

// Few pairs leave time for more rounds.
const ROUNDS = { least: 14, most: 64, pairs: 14_000 };
const ROUGH: Precision = { noticed: 3e-3, sweeps: 20, everywhere: false };
const FINE: Precision = { noticed: 1e-6, sweeps: 80, everywhere: true };
const REMEMBERS_AFTER = 3;
// The more pairs, the fewer tests each of them remembers.
const REMEMBERED_BY = [
  { pairs: 150, tests: REMEMBERED },
  { pairs: 450, tests: 2 },
  { pairs: Infinity, tests: 1 },
] as const;
// Fewer pairs than this all stay.
const FEW = 150;
const STEP = 0.6;
const SLOWER_EVERY = 6;
const THINNED_AFTER = 2;
const KEPT_SHARE = 0.92;
const SURCHARGE_STEP = 0.15;
// No share is ever given up wholly: it must be able to come back.
const LEAST_SHARE = 1e-9;
// The parts of a whole must not exceed it by rounding.
const BARELY_LESS = 1 - 1e-12;

/** Divides the money so that the pairs together are worth much at the start of the problem: exponentiated gradient steps, since the
 * worth is concave in the shares and its gradient is how often each pair's policy takes the action. Any division is valid; the best
 * found is returned. `rounds`: steps to take; default 14, and up to 64 while all pairs together were solved less than 14 000 times.
 * Source: Lagrangian decomposition, Guignard & Kim 1987, Mathematical Programming 39:215-228; exponentiated gradient: Kivinen & Warmuth
 * 1997, Information and Computation 132:1-63. */
export function pairBudgets(game: PairGame, rounds?: number): PairBudgets {
  return runToEnd(pairBudgetsInTurns(game, rounds));
}

/** The same, giving way after every `PAIRS_PER_TURN` pairs that were solved, followed or certified. */
export function* pairBudgetsInTurns(game: PairGame, rounds?: number): Turns<PairBudgets> {
  const { weight, first, second, pools, tests, access, budget, budgetAfter } = game;
  const count = weight.length;
  const worthOf = new Float64Array(first.length);
  let remaining = Int32Array.from(first, (_, p) => p);
  const work = createPairWork(game);
  const logs = weight.map(Math.log);
  const money = new Float64Array(2 * pools.length);
  const share = new Float64Array(2 * pools.length);
  const use = new Float64Array(pools.length);
  const values = new Float64Array(first.length * PAIR_STATES * GRID);
  let shares = firstShares(game);
  let surcharge = tests.map(() => new Float64Array(count));
  let parts = access.map(({ behind }) => behind.map(() => new Float64Array(count).fill(1 / behind.length)));
  const most = new Float64Array(budget.length);
  const sums = new Float64Array(budget.length);
  const pooled = new Float64Array(budget.length);
  const added = new Float64Array(budget.length);

  const fillPools = (): void => {
    added.fill(0);
    surcharge.forEach((row, at) => row.forEach((x, h) => (added[at * count + h]! += x)));
    access.forEach(({ cost, behind, isFree }, k) =>
      behind.forEach((group, j) => {
        const part = parts[k]![j]!;
        for (const at of group) {
          for (let h = 0; h < count; h += 1) if (isFree[h] === 1) added[at * count + h]! += cost * part[h]!;
        }
      }),
    );
    for (let i = 0; i < pools.length; i += 1) {
      const pool = pools[i]!;
      const at = 2 * i - (i & 1);
      const [fresh, after] = [budget[pool]! + added[pool]!, budgetAfter[pool]! + added[pool]!];
      const most = Math.max(fresh, after);
      money[at] = BARELY_LESS * fresh * shares[i]!;
      money[at + 2] = BARELY_LESS * after * shares[i]!;
      share[at] = most === 0 ? 0 : fresh / most;
      share[at + 2] = most === 0 ? 0 : after / most;
    }
  };
  const worthNow = (): number => {
    let sum = 0;
    for (const p of remaining) {
      const [a, b] = [first[p]!, second[p]!];
      worthOf[p] = interpolate(values, p * PAIR_STATES * GRID, weight[a]!, weight[b]!, logs[a]! - logs[b]!);
      sum += worthOf[p]!;
    }
    for (const row of surcharge) for (let h = 0; h < count; h += 1) sum -= row[h]! * weight[h]!;
    return sum;
  };
  const climb = (step: number): void => {
    most.fill(1);
    sums.fill(0);
    for (let i = 0; i < pools.length; i += 1) most[pools[i]!] = Math.max(most[pools[i]!]!, use[i]!);
    pooled.fill(0);
    for (let i = 0; i < pools.length; i += 1) {
      const pool = pools[i]!;
      pooled[pool]! += shares[i]! * use[i]!;
      if (shares[i] === 0) continue;
      shares[i] = shares[i]! * Math.exp(step * Math.min(3, (2 * use[i]!) / most[pool]!)) + LEAST_SHARE;
      sums[pool]! += shares[i]!;
    }
    for (let i = 0; i < pools.length; i += 1) if (shares[i]! > 0) shares[i]! /= sums[pools[i]!]!;
    // `pooled` now holds what one more unit of money would be worth in each pool, per weight
    access.forEach(({ behind }, k) => climbParts(parts[k]!, behind, pooled, count, step));
    surcharge.forEach((row, at) => {
      const scale = (SURCHARGE_STEP * tests[at]!.cost * step) / STEP;
      for (let h = 0; h < count; h += 1) row[h] = Math.max(0, row[h]! + scale * (pooled[at * count + h]! - 1));
    });
  };

  let done = 0;
  const isTurnOver = (): boolean => (done += 1) % PAIRS_PER_TURN === 0;
  const copy = (rows: readonly Float64Array<ArrayBuffer>[]): Float64Array<ArrayBuffer>[] =>
    rows.map((row) => row.slice());
  let best = { worth: -Infinity, shares, surcharge, parts };
  let solved = 0;
  for (let round = 0; ; round += 1) {
    fillPools();
    for (const p of remaining) {
      solvePair(game, p, money, work, values, ROUGH);
      if (isTurnOver()) yield;
    }
    solved += remaining.length;
    const worth = worthNow();
    if (worth > best.worth)
      best = { worth, shares: shares.slice(), surcharge: copy(surcharge), parts: parts.map(copy) };
    if (round + 1 >= (rounds ?? (solved < ROUNDS.pairs ? ROUNDS.most : ROUNDS.least))) break;
    use.fill(0);
    for (const p of remaining) {
      countUses(game, p, share, work, use);
      if (isTurnOver()) yield;
    }
    if (round === REMEMBERS_AFTER) {
      const { tests: most } = REMEMBERED_BY.find(({ pairs }) => remaining.length <= pairs)!;
      for (const p of remaining) rememberMostUsed(game, p, most, use, work);
    }
    if (round === THINNED_AFTER && remaining.length > FEW)
      remaining = dropWorthless(game, remaining, worthOf, shares, values);
    climb(STEP / Math.sqrt(1 + round / SLOWER_EVERY));
  }
  ({ shares, surcharge, parts } = best);
  fillPools();
  for (const p of remaining) {
    solvePair(game, p, money, work, values, FINE);
    certifyPair(game, p, money, work, values);
    if (isTurnOver()) yield;
  }
  const charges = new Float64Array(budget.length);
  for (const p of remaining) {
    chargeWeakTests(game, p, work, values, charges);
    if (isTurnOver()) yield;
  }
  surcharge.forEach((row, at) => row.forEach((_, h) => (row[h]! += charges[at * count + h]!)));
  const remembered = new Int32Array(first.length * REMEMBERED).fill(-1);
  for (const p of remaining) {
    for (let action = game.actionsOf[p]!; action < game.actionsOf[p + 1]!; action += 1) {
      const at = work.memory[action]!;
      if (at >= 0) remembered[p * REMEMBERED + at] = Math.floor(pools[2 * action]! / count);
    }
  }
  return { values, remembered, testSurcharge: surcharge, accessPart: parts, worth: worthNow() };
}

/** Pairs worth next to nothing cost as much time as others: they lose all shares. Returns those that stay. */
function dropWorthless(
  { actionsOf }: PairGame,
  remaining: Int32Array<ArrayBuffer>,
  worthOf: Float64Array,
  shares: Float64Array,
  values: Float64Array,
): Int32Array<ArrayBuffer> {
  const total = remaining.reduce((sum, p) => sum + worthOf[p]!, 0);
  let left = KEPT_SHARE * total;
  const kept = remaining
    .toSorted((p, q) => worthOf[q]! - worthOf[p]!)
    .filter((p) => {
      const isKept = left > 0;
      left -= worthOf[p]!;
      if (!isKept) {
        shares.fill(0, 2 * actionsOf[p]!, 2 * actionsOf[p + 1]!);
        values.fill(0, p * PAIR_STATES * GRID, (p + 1) * PAIR_STATES * GRID);
      }
      return isKept;
    });
  return kept.sort();
}

/** Whoever is confused with something probable needs more. */
function firstShares({ weight, effect, pools, budget }: PairGame): Float64Array {
  const count = weight.length;
  const sums = new Float64Array(budget.length);
  const shares = Float64Array.from(pools, (pool, i) => {
    if (effect[i >> 1] === EFFECT.weakTest) return 0;
    const share = Math.sqrt(weight[pools[i ^ 1]! % count]!);
    sums[pool]! += share;
    return share;
  });
  return shares.map((share, i) => (share === 0 ? 0 : share / sums[pools[i]!]!));
}

function climbParts(
  parts: readonly Float64Array[],
  behind: readonly (readonly number[])[],
  worth: Float64Array,
  count: number,
  step: number,
): void {
  for (let h = 0; h < count; h += 1) {
    let sum = 0;
    parts.forEach((part, j) => {
      let more = 0;
      for (const at of behind[j]!) more += worth[at * count + h]!;
      const next = part[h]! * Math.exp(step * Math.min(2, more)) + LEAST_SHARE;
      part[h] = next;
      sum += next;
    });
    for (const part of parts) part[h]! /= sum;
  }
}
