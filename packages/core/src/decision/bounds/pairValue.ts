import { GRID, MARGIN, ODDS, placeOf, upperWeight } from './oddsGrid.ts';
import { CLAIM, PHASES, type PairGame } from './pairGame.ts';

/** Money of every claim, at [claim * 4 + ...]: of the first and of the second member, then of both after a repair touched them. */
export type ClaimMoney = Float64Array;

/** How closely values are iterated: an improvement by less than the share `noticed` is none; `everywhere` looks at every test at every
 * place, else only at the first, and elsewhere at those that were worth while lately. `certifyPair` makes up for the rest. */
export interface Precision {
  readonly noticed: number;
  readonly sweeps: number;
  readonly everywhere: boolean;
}

/** Tests of a pair that are remembered once they are done, at most; others may be repeated. */
export const REMEMBERED = 1;
const LAYERS = 1 << REMEMBERED;
/** Places of a pair: its phase, and which of the remembered tests are done. */
export const PLACES: number = PHASES * LAYERS;

/** Where a pair stands: its grid among those of the pair. */
export function placeOfPair(phase: number, done: number): number {
  return phase * LAYERS + done;
}

/** What solving pairs needs besides the game; made once, overwritten by every call. */
export interface PairWork {
  /** claim -> which of its pair's remembered tests it is, or -1. */
  readonly memory: Int8Array;
  /** pair -> tests it remembers. */
  readonly remembers: Uint8Array;
  /** Claims of the pair at hand: tests that may be repeated; all others. */
  readonly repeatable: Int32Array;
  readonly others: Int32Array;
  /** claim -> 1 where it was worth while lately. */
  readonly isActive: Uint8Array;
  /** (pair * PLACES + place) * GRID + point -> claim that is best there. */
  readonly best: Int32Array;
  /** Money of the last call. */
  readonly before: Float64Array;
  /** Values with their margins, by place. */
  readonly padded: readonly Float64Array[];
  readonly trial: Float64Array;
  readonly mass: readonly Float64Array[];
  readonly next: readonly Float64Array[];
  /** place -> 1 where there is mass. */
  readonly hasMass: Uint8Array;
}

const MOST_STEPS = 12;
const MOST_GROWTH = 3;
const LOST_MASS = 1e-5;
// Phases after a repair come first: the first phase leads to them.
const ORDER = [1, 2, 0] as const;

export function pairWork({ first, claimsOf, tapsOf }: PairGame): PairWork {
  let most = 0;
  for (let pair = 0; pair < first.length; pair += 1) most = Math.max(most, claimsOf[pair + 1]! - claimsOf[pair]!);
  const rows = (length: number): Float64Array[] => Array.from({ length: PLACES }, () => new Float64Array(length));
  return {
    memory: new Int8Array(tapsOf.length - 1).fill(-1),
    remembers: new Uint8Array(first.length),
    repeatable: new Int32Array(most),
    others: new Int32Array(most),
    isActive: new Uint8Array(tapsOf.length - 1),
    best: new Int32Array(first.length * PLACES * GRID),
    before: new Float64Array(4 * tapsOf.length),
    padded: rows(GRID + 2 * MARGIN + 1),
    trial: new Float64Array(GRID),
    mass: rows(GRID),
    next: rows(GRID),
    hasMass: new Uint8Array(PLACES),
  };
}

/** Remembers the tests of a pair that its policy takes most often. Its values have to be found from the start again. */
export function rememberMostUsed(
  { weight, first, second, claimsOf, kind }: PairGame,
  pair: number,
  use: Float64Array,
  { memory, remembers, before }: PairWork,
): void {
  const [from, to] = [claimsOf[pair]!, claimsOf[pair + 1]!];
  const [a, b] = [weight[first[pair]!]!, weight[second[pair]!]!];
  const often = (claim: number): number => use[2 * claim]! * a + use[2 * claim + 1]! * b;
  const used: number[] = [];
  for (let claim = from; claim < to; claim += 1) if (kind[claim] === CLAIM.test && often(claim) > 0) used.push(claim);
  used.sort((c, d) => often(d) - often(c));
  memory.fill(-1, from, to);
  used.slice(0, REMEMBERED).forEach((claim, at) => (memory[claim] = at));
  remembers[pair] = Math.min(REMEMBERED, used.length);
  before.fill(0, 4 * from, 4 * to);
}

const ENDS = -1;

/** Place to which a claim leads from another; `ENDS` where it ends the confusion. */
function leadsTo({ kind, tapsOf }: PairGame, { memory }: PairWork, claim: number, place: number): number {
  if (tapsOf[claim] === tapsOf[claim + 1]) return ENDS;
  if (kind[claim] === CLAIM.test) return memory[claim]! < 0 ? place : place | (1 << memory[claim]!);
  return place < LAYERS ? kind[claim]! * LAYERS + place : ENDS;
}

/** Whether a claim can be taken at a place. */
function isOpen({ phases }: PairGame, { memory }: PairWork, claim: number, place: number): boolean {
  if ((phases[claim]! & (1 << Math.floor(place / LAYERS))) === 0) return false;
  return memory[claim]! < 0 || (place & (1 << memory[claim]!)) === 0;
}

/** Least cost of ending one pair's confusion, at every place and point of the grid (`values`, from `pair * PLACES * GRID` on), where
 * every action costs what its claim has, and tests can be repeated unless they are remembered: value iteration from above.
 * Source: Wald 1947, Sequential Analysis; chords between points as in Lovejoy 1991, Operations Research 39:162-175. */
export function solvePair(
  game: PairGame,
  pair: number,
  money: ClaimMoney,
  work: PairWork,
  values: Float64Array,
  precision: Precision,
): void {
  const { claimsOf, kind, tapsOf } = game;
  const { trial, best, isActive, memory, padded, repeatable, others } = work;
  const [from, to] = [claimsOf[pair]!, claimsOf[pair + 1]!];
  const layers = 1 << work.remembers[pair]!;
  let repeatables = 0;
  let rest = 0;
  for (let claim = from; claim < to; claim += 1) {
    if (kind[claim] === CLAIM.faint) continue;
    const isRepeatable = kind[claim] === CLAIM.test && memory[claim]! < 0 && tapsOf[claim] !== tapsOf[claim + 1];
    if (isRepeatable) repeatable[repeatables++] = claim;
    else others[rest++] = claim;
  }
  // what was found for other money serves as a start from above, when enlarged as much as the money of the actions in use
  const growth = growthOf(claimsOf, pair, money, work);
  for (const phase of ORDER) {
    for (let done = layers - 1; done >= 0; done -= 1) {
      const place = placeOfPair(phase, done);
      const at = (pair * PLACES + place) * GRID;
      const here = padded[place]!;
      for (let g = 0; g < GRID; g += 1) values[at + g] = growth < MOST_GROWTH ? growth * values[at + g]! : Infinity;
      for (let i = 0; i < rest; i += 1) {
        const claim = others[i]!;
        if (!isOpen(game, work, claim, place)) continue;
        const next = leadsTo(game, work, claim, place);
        if (next === ENDS) trial.fill(0);
        else afterResult(game, claim, padded[next]!, trial);
        lower(values, at, best, claim, money, phase, trial, 0);
      }
      pad(values, at, here);
      for (let sweep = 0; sweep < precision.sweeps; sweep += 1) {
        let improved = false;
        // those that were worth while lately, and when they are of no more use, the rest
        for (let active = 1; active >= 0 && !improved; active -= 1) {
          if (active === 0 && place !== 0 && !precision.everywhere) break;
          for (let i = 0; i < repeatables; i += 1) {
            const claim = repeatable[i]!;
            if (isActive[claim] !== active) continue;
            afterResult(game, claim, here, trial);
            if (!lower(values, at, best, claim, money, phase, trial, precision.noticed)) continue;
            pad(values, at, here);
            isActive[claim] = 1;
            improved = true;
          }
        }
        if (!improved) break;
      }
    }
  }
  isActive.fill(0, from, to);
  for (let phase = 0; phase < PHASES; phase += 1) {
    const at = (pair * PLACES + placeOfPair(phase, 0)) * GRID;
    for (let i = 0; i < layers * GRID; i += 1) isActive[best[at + i]!] = 1;
  }
}

/** Takes a claim wherever it is cheaper than what is known by more than the share `noticed`. */
function lower(
  values: Float64Array,
  at: number,
  best: Int32Array,
  claim: number,
  money: ClaimMoney,
  phase: number,
  then: Float64Array,
  noticed: number,
): boolean {
  const [u, v] = [money[4 * claim + ofFirst(phase)]!, money[4 * claim + ofSecond(phase)]!];
  const keep = 1 - noticed;
  let improved = false;
  for (let g = 0; g < GRID; g += 1) {
    const cost = u * ODDS[g]! + v + then[g]!;
    if (cost >= values[at + g]! * keep) continue;
    values[at + g] = cost;
    best[at + g] = claim;
    improved = true;
  }
  return improved;
}

function ofFirst(phase: number): number {
  return phase === 1 ? 2 : 0;
}

function ofSecond(phase: number): number {
  return phase === 2 ? 3 : 1;
}

/** Scales a pair's values down until nothing lowers them by more than its claim has, at any point: then nowhere, because the value is
 * concave and costs are linear. A remembered test that was done otherwise lowers nothing. */
export function certifyPair(
  game: PairGame,
  pair: number,
  money: ClaimMoney,
  work: PairWork,
  values: Float64Array,
): void {
  const { claimsOf } = game;
  const { trial, padded } = work;
  const count = work.remembers[pair]!;
  for (const phase of ORDER) {
    for (let done = (1 << count) - 1; done >= 0; done -= 1) {
      const place = placeOfPair(phase, done);
      const at = (pair * PLACES + place) * GRID;
      pad(values, at, padded[place]!);
      let scale = 1;
      for (let claim = claimsOf[pair]!; claim < claimsOf[pair + 1]!; claim += 1) {
        if (!isOpen(game, work, claim, place)) continue;
        const next = leadsTo(game, work, claim, place);
        if (next === ENDS) trial.fill(0);
        else afterResult(game, claim, padded[next]!, trial);
        const [u, v] = [money[4 * claim + ofFirst(phase)]!, money[4 * claim + ofSecond(phase)]!];
        for (let g = 0; g < GRID; g += 1) {
          const [value, then] = [values[at + g]!, trial[g]!];
          const cost = u * ODDS[g]! + v;
          if (value - then > cost) scale = Math.min(scale, next === place ? cost / (value - then) : (cost + then) / value);
        }
      }
      for (let bit = 0; bit < count; bit += 1) {
        if ((done & (1 << bit)) !== 0) continue;
        const above = at + (1 << bit) * GRID;
        for (let g = 0; g < GRID; g += 1) {
          if (values[at + g]! * scale > values[above + g]!) scale = values[above + g]! / values[at + g]!;
        }
      }
      if (scale === 1) continue;
      for (let g = 0; g < GRID; g += 1) values[at + g]! *= scale;
      pad(values, at, padded[place]!);
    }
  }
}

/** What faint tests lower a certified pair's value by at most, as money of both members: added to `owed` by pool. Of all lines above the
 * fall the one that asks the same of both members at the start. */
export function oweFaint(game: PairGame, pair: number, work: PairWork, values: Float64Array, owed: Float64Array): void {
  const { weight, first, second, claimsOf, kind, pools } = game;
  const { trial, padded } = work;
  const slope = weight[second[pair]!]! / weight[first[pair]!]!;
  const layers = 1 << work.remembers[pair]!;
  for (let claim = claimsOf[pair]!; claim < claimsOf[pair + 1]!; claim += 1) {
    if (kind[claim] !== CLAIM.faint) continue;
    let money = 0;
    for (const phase of ORDER) {
      for (let done = 0; done < layers; done += 1) {
        const place = placeOfPair(phase, done);
        const at = (pair * PLACES + place) * GRID;
        pad(values, at, padded[place]!);
        afterResult(game, claim, padded[place]!, trial);
        for (let g = 0; g < GRID; g += 1) {
          const fall = values[at + g]! - trial[g]!;
          if (fall > money * (slope * ODDS[g]! + 1)) money = fall / (slope * ODDS[g]! + 1);
        }
      }
    }
    owed[pools[2 * claim]!]! += slope * money;
    owed[pools[2 * claim + 1]!]! += money;
  }
}

/** How often the best policy of a pair takes each of its actions while the first (`use[2 * claim]`) or the second member is true, each
 * time counted by what its money is then to what it is at most (`share`, laid out like the money). This is the gradient of the pair's
 * value by the money of its claims, per weight. */
export function usesOfPair(game: PairGame, pair: number, share: ClaimMoney, work: PairWork, use: Float64Array): void {
  const { weight, first, second, claimsOf, tapsOf, shift, lower: low, upper } = game;
  const { best, hasMass } = work;
  let { mass, next } = work;
  const [a, b] = [weight[first[pair]!]!, weight[second[pair]!]!];
  use.fill(0, 2 * claimsOf[pair]!, 2 * claimsOf[pair + 1]!);
  const start = mass[0]!.fill(0);
  hasMass.fill(0);
  hasMass[0] = 1;
  const place = placeOf(Math.log(a / b));
  if (place < 0) start[0] = a / ODDS[0]!;
  else if (place >= GRID - 1) start[GRID - 1] = b;
  else {
    const whole = Math.floor(place);
    const up = upperWeight(place - whole);
    start[whole] = b * (1 - up);
    start[whole + 1] = b * up;
  }
  // a bit for places that have mass now, another for those that will
  for (let step = 0; step < MOST_STEPS; step += 1) {
    let goesOn = false;
    for (let from = 0; from < PLACES; from += 1) {
      if ((hasMass[from]! & 1) === 0) continue;
      const phase = Math.floor(from / LAYERS);
      const at = (pair * PLACES + from) * GRID;
      const row = mass[from]!;
      for (let g = 0; g < GRID; g += 1) {
        const m = row[g]!;
        if (m <= LOST_MASS * b && m * ODDS[g]! <= LOST_MASS * a) continue;
        const claim = best[at + g]!;
        use[2 * claim]! += m * ODDS[g]! * share[4 * claim + ofFirst(phase)]!;
        use[2 * claim + 1]! += m * share[4 * claim + ofSecond(phase)]!;
        const to = leadsTo(game, work, claim, from);
        if (to === ENDS) continue;
        goesOn = true;
        const onto = next[to]!;
        if ((hasMass[to]! & 2) === 0) {
          hasMass[to]! |= 2;
          onto.fill(0);
        }
        for (let tap = tapsOf[claim]!; tap < tapsOf[claim + 1]!; tap += 1) {
          const point = g + shift[tap]!;
          put(onto, point, m * low[tap]!);
          put(onto, point + 1, m * upper[tap]!);
        }
      }
    }
    if (!goesOn) break;
    for (let p = 0; p < PLACES; p += 1) hasMass[p]! >>= 1;
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
    for (let i = 4 * claim; i < 4 * claim + 4; i += 1) {
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
  const { tapsOf, shift, lower: low, upper } = game;
  const to = tapsOf[claim + 1]!;
  let tap = tapsOf[claim]!;
  // two at a time: most tests have two results
  for (let isFirst = true; tap < to || isFirst; isFirst = false) {
    const from = tap < to ? MARGIN + shift[tap]! : 0;
    const down = tap < to ? low[tap]! : 0;
    const up = tap < to ? upper[tap]! : 0;
    tap += 1;
    const other = tap < to ? MARGIN + shift[tap]! : 0;
    const otherDown = tap < to ? low[tap]! : 0;
    const otherUp = tap < to ? upper[tap]! : 0;
    tap += 1;
    let here = padded[from]!;
    let there = padded[other]!;
    for (let g = 0; g < GRID; g += 1) {
      const next = padded[from + g + 1]!;
      const after = padded[other + g + 1]!;
      const sum = down * here + up * next + otherDown * there + otherUp * after;
      trial[g] = isFirst ? sum : trial[g]! + sum;
      here = next;
      there = after;
    }
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
