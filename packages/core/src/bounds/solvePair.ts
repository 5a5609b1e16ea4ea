import { GRID, ODDS } from './oddsGrid.ts';
import { CLAIM, PHASES, type PairGame } from './pairGame.ts';
import {
  afterResult,
  ENDS,
  isOpen,
  leadsTo,
  ofFirst,
  ofSecond,
  ORDER,
  pad,
  placeOfPair,
  PLACES,
  type ClaimMoney,
  type PairWork,
} from './pairPlaces.ts';

/** How closely values are iterated: an improvement by less than the share `noticed` is none; `everywhere` looks at every test at every
 * place, else only at the first, and elsewhere at those that were worth while lately. `certifyPair` makes up for the rest. */
export interface Precision {
  readonly noticed: number;
  readonly sweeps: number;
  readonly everywhere: boolean;
}

const MOST_GROWTH = 3;

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
