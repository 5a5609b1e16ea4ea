import { GRID, MARGIN, ODDS, placeOf, upperWeight } from './oddsGrid.ts';
import type { PairGame } from './pairGame.ts';

/** Money of every claim: of the first member, of the second. */
export type ClaimMoney = Float64Array;

/** How closely values are iterated: an improvement by less than the share `noticed` is none. `certifyPair` makes up for the rest. */
export interface Precision {
  readonly noticed: number;
  readonly sweeps: number;
}

/** What solving pairs needs besides the game; made once, overwritten by every call. */
export interface PairWork {
  /** claim -> 1 where it was worth while lately; others are looked at only when nothing else improves. */
  readonly isActive: Uint8Array;
  /** pair * GRID + point -> claim that is best there. */
  readonly best: Int32Array;
  /** Money of the last call, by claim and member. */
  readonly before: Float64Array;
  readonly padded: Float64Array;
  readonly trial: Float64Array;
  readonly mass: Float64Array;
  readonly next: Float64Array;
}

const MOST_STEPS = 30;
const MOST_GROWTH = 3;
const LOST_MASS = 1e-8;

export function pairWork({ first, pools, tapsOf }: PairGame): PairWork {
  return {
    isActive: new Uint8Array(tapsOf.length - 1),
    best: new Int32Array(first.length * GRID),
    before: new Float64Array(pools.length),
    padded: new Float64Array(GRID + 2 * MARGIN + 1),
    trial: new Float64Array(GRID),
    mass: new Float64Array(GRID),
    next: new Float64Array(GRID),
  };
}

/** Least cost of ending one pair's confusion, at every point of the grid (`values`, from `pair * GRID` on), where every action costs
 * what its claim has, and tests can be repeated: value iteration from above.
 * Source: Wald 1947, Sequential Analysis; chords between points as in Lovejoy 1991, Operations Research 39:162-175. */
export function solvePair(
  game: PairGame,
  pair: number,
  money: ClaimMoney,
  work: PairWork,
  values: Float64Array,
  { noticed, sweeps }: Precision,
): void {
  const { claimsOf, tapsOf } = game;
  const { padded, trial, best, isActive } = work;
  const at = pair * GRID;
  const [from, to] = [claimsOf[pair]!, claimsOf[pair + 1]!];
  // what was found for other money serves as a start from above, when enlarged as much as the money of the actions in use
  const growth = growthOf(claimsOf, pair, money, work);
  for (let g = 0; g < GRID; g += 1) values[at + g] = growth < MOST_GROWTH ? growth * values[at + g]! : Infinity;
  for (let claim = from; claim < to; claim += 1) {
    if (tapsOf[claim] !== tapsOf[claim + 1]) continue;
    const [u, v] = [money[2 * claim]!, money[2 * claim + 1]!];
    for (let g = 0; g < GRID; g += 1) {
      const cost = u * ODDS[g]! + v;
      if (cost >= values[at + g]!) continue;
      values[at + g] = cost;
      best[at + g] = claim;
    }
  }
  pad(values, at, padded);
  const improve = (claim: number): boolean => {
    if (tapsOf[claim] === tapsOf[claim + 1]) return false;
    afterResult(game, claim, padded, trial);
    const [u, v] = [money[2 * claim]!, money[2 * claim + 1]!];
    let improved = false;
    for (let g = 0; g < GRID; g += 1) {
      const cost = u * ODDS[g]! + v + trial[g]!;
      if (cost >= values[at + g]! * (1 - noticed)) continue;
      values[at + g] = cost;
      best[at + g] = claim;
      improved = true;
    }
    if (improved) pad(values, at, padded);
    return improved;
  };
  for (let sweep = 0; sweep < sweeps; sweep += 1) {
    let improved = false;
    for (let claim = from; claim < to; claim += 1) if (isActive[claim] === 1 && improve(claim)) improved = true;
    if (improved) continue;
    for (let claim = from; claim < to; claim += 1) {
      if (isActive[claim] === 0 && improve(claim)) {
        isActive[claim] = 1;
        improved = true;
      }
    }
    if (!improved) break;
  }
  isActive.fill(0, from, to);
  for (let g = 0; g < GRID; g += 1) isActive[best[at + g]!] = 1;
}

/** Scales a pair's values down until no test lowers them by more than its claim has, at any point: then nowhere, because the value is
 * concave and costs are linear. */
export function certifyPair(
  game: PairGame,
  pair: number,
  money: ClaimMoney,
  { padded, trial }: PairWork,
  values: Float64Array,
): void {
  const { claimsOf, tapsOf } = game;
  const at = pair * GRID;
  pad(values, at, padded);
  let scale = 1;
  for (let claim = claimsOf[pair]!; claim < claimsOf[pair + 1]!; claim += 1) {
    if (tapsOf[claim] === tapsOf[claim + 1]) continue;
    afterResult(game, claim, padded, trial);
    for (let g = 0; g < GRID; g += 1) {
      const fall = values[at + g]! - trial[g]!;
      const cost = money[2 * claim]! * ODDS[g]! + money[2 * claim + 1]!;
      if (fall > cost) scale = Math.min(scale, cost / fall);
    }
  }
  if (scale < 1) for (let g = 0; g < GRID; g += 1) values[at + g]! *= scale;
}

/** How often the best policy of a pair takes each of its actions while the first (`use[2 * claim]`) or the second member is true. This
 * is the gradient of the pair's value by the money of its claims, per weight. */
export function usesOfPair(game: PairGame, pair: number, work: PairWork, use: Float64Array): void {
  const { weight, first, second, claimsOf, tapsOf, shift, lower, upper } = game;
  const { best } = work;
  let { mass, next } = work;
  const at = pair * GRID;
  const [a, b] = [weight[first[pair]!]!, weight[second[pair]!]!];
  use.fill(0, 2 * claimsOf[pair]!, 2 * claimsOf[pair + 1]!);
  mass.fill(0);
  const place = placeOf(Math.log(a / b));
  if (place < 0) mass[0] = a / ODDS[0]!;
  else if (place >= GRID - 1) mass[GRID - 1] = b;
  else {
    const whole = Math.floor(place);
    const up = upperWeight(place - whole);
    mass[whole] = b * (1 - up);
    mass[whole + 1] = b * up;
  }
  for (let step = 0; step < MOST_STEPS; step += 1) {
    let goesOn = false;
    next.fill(0);
    for (let g = 0; g < GRID; g += 1) {
      const m = mass[g]!;
      if (m <= LOST_MASS * b && m * ODDS[g]! <= LOST_MASS * a) continue;
      const claim = best[at + g]!;
      use[2 * claim]! += m * ODDS[g]!;
      use[2 * claim + 1]! += m;
      for (let tap = tapsOf[claim]!; tap < tapsOf[claim + 1]!; tap += 1) {
        goesOn = true;
        const to = g + shift[tap]!;
        put(next, to, m * lower[tap]!);
        put(next, to + 1, m * upper[tap]!);
      }
    }
    if (!goesOn) break;
    [mass, next] = [next, mass];
  }
  for (let claim = claimsOf[pair]!; claim < claimsOf[pair + 1]!; claim += 1) {
    use[2 * claim]! /= a;
    use[2 * claim + 1]! /= b;
  }
}

function growthOf(claimsOf: Int32Array, pair: number, money: ClaimMoney, { isActive, before }: PairWork): number {
  let growth = 0;
  for (let claim = claimsOf[pair]!; claim < claimsOf[pair + 1]!; claim += 1) {
    for (let i = 2 * claim; i < 2 * claim + 2; i += 1) {
      if (isActive[claim] === 1 && money[i]! > growth * before[i]!) growth = money[i]! / before[i]!;
      before[i] = money[i]!;
    }
  }
  return growth === 0 ? Infinity : growth;
}

function put(mass: Float64Array, point: number, m: number): void {
  if (point < 0) mass[0]! += m * (ODDS[0]! / ODDS[-point]!);
  else if (point >= GRID) mass[GRID - 1]! += m;
  else mass[point]! += m;
}

/** Expected value after a test's result, at every point. */
function afterResult(game: PairGame, claim: number, padded: Float64Array, trial: Float64Array): void {
  const { tapsOf, shift, lower, upper } = game;
  trial.fill(0);
  for (let tap = tapsOf[claim]!; tap < tapsOf[claim + 1]!; tap += 1) {
    const from = MARGIN + shift[tap]!;
    const [low, high] = [lower[tap]!, upper[tap]!];
    for (let g = 0; g < GRID; g += 1) trial[g]! += low * padded[from + g]! + high * padded[from + g + 1]!;
  }
}

/** The values with what they are beyond the grid. */
function pad(values: Float64Array, at: number, padded: Float64Array): void {
  const ratio = ODDS[0]! / ODDS[1]!;
  let below = values[at]!;
  for (let g = MARGIN - 1; g >= 0; g -= 1) padded[g] = below *= ratio;
  for (let g = 0; g < GRID; g += 1) padded[MARGIN + g] = values[at + g]!;
  padded.fill(values[at + GRID - 1]!, MARGIN + GRID);
}
