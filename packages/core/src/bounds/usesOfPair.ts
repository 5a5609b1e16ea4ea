import { GRID, ODDS, placeOf, upperWeight } from './oddsGrid.ts';
import type { PairGame } from './pairGame.ts';
import { ENDS, LAYERS, leadsTo, ofFirst, ofSecond, PLACES, type ClaimMoney, type PairWork } from './pairPlaces.ts';

const MOST_STEPS = 12;
const LOST_MASS = 1e-5;

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

function put(mass: Float64Array, point: number, m: number): void {
  if (point < 0) mass[0]! += m * (ODDS[0]! / ODDS[-point]!);
  else if (point >= GRID) mass[GRID - 1]! += m;
  else mass[point]! += m;
}
