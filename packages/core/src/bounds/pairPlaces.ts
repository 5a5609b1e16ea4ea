import { GRID, MARGIN, ODDS } from './oddsGrid.ts';
import { CLAIM, PHASES, type PairGame } from './pairGame.ts';

/** Tests of a pair that are remembered once they are done, at most; others may be repeated. */
export const REMEMBERED = 3;
/** States of what is remembered. */
export const LAYERS: number = 1 << REMEMBERED;
/** Places of a pair: its phase, and which of the remembered tests are done. */
export const PLACES: number = PHASES * LAYERS;

/** Where a pair stands: its grid among those of the pair. */
export function placeOfPair(phase: number, done: number): number {
  return phase * LAYERS + done;
}

// Phases after a repair come first: the first phase leads to them.
export const ORDER = [1, 2, 0] as const;

/** Money of every claim, at [claim * 4 + ...]: of the first and of the second member, then of both after a repair touched them. */
export type ClaimMoney = Float64Array;

/** Where the money of the first, of the second member lies in a phase. */
export function ofFirst(phase: number): number {
  return phase === 1 ? 2 : 0;
}

export function ofSecond(phase: number): number {
  return phase === 2 ? 3 : 1;
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

/** Room for a game's pairs, with nothing remembered. */
export function createPairWork({ first, claimsOf, tapsOf }: PairGame): PairWork {
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

/** Remembers `most` tests of a pair, those that its policy takes most often. Its values have to be found from the start again. */
export function rememberMostUsed(
  { weight, first, second, claimsOf, kind }: PairGame,
  pair: number,
  most: number,
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
  used.slice(0, most).forEach((claim, at) => (memory[claim] = at));
  remembers[pair] = Math.min(most, used.length);
  before.fill(0, 4 * from, 4 * to);
}

export const ENDS = -1;

/** Place to which a claim leads from another; `ENDS` where it ends the confusion. */
export function leadsTo({ kind, tapsOf }: PairGame, { memory }: PairWork, claim: number, place: number): number {
  if (tapsOf[claim] === tapsOf[claim + 1]) return ENDS;
  if (kind[claim] === CLAIM.test) return memory[claim]! < 0 ? place : place | (1 << memory[claim]!);
  return place < LAYERS ? kind[claim]! * LAYERS + place : ENDS;
}

/** Whether a claim can be taken at a place. */
export function isOpen({ phases }: PairGame, { memory }: PairWork, claim: number, place: number): boolean {
  if ((phases[claim]! & (1 << Math.floor(place / LAYERS))) === 0) return false;
  return memory[claim]! < 0 || (place & (1 << memory[claim]!)) === 0;
}

/** Expected value after a test's result, at every point. */
export function afterResult(game: PairGame, claim: number, padded: Float64Array, trial: Float64Array): void {
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
export function pad(values: Float64Array, at: number, padded: Float64Array): void {
  const ratio = ODDS[0]! / ODDS[1]!;
  let below = values[at]!;
  for (let g = MARGIN - 1; g >= 0; g -= 1) padded[g] = below *= ratio;
  for (let g = 0; g < GRID; g += 1) padded[MARGIN + g] = values[at + g]!;
  padded.fill(values[at + GRID - 1]!, MARGIN + GRID);
}
