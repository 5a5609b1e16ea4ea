import { GRID, ODDS } from './oddsGrid.ts';
import { CLAIM, type PairGame } from './pairGame.ts';
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
          if (value - then > cost)
            scale = Math.min(scale, next === place ? cost / (value - then) : (cost + then) / value);
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
