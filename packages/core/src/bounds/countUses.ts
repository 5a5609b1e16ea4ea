import { GRID, ODDS, gridPosition, upperWeight } from './oddsGrid.ts';
import type { PairGame } from './pairGame.ts';
import {
  ENDS,
  LAYERS,
  nextState,
  ofFirst,
  ofSecond,
  PAIR_STATES,
  type ActionMoney,
  type PairWork,
} from './pairStates.ts';

const MOST_STEPS = 12;
const LOST_MASS = 1e-5;

/** How often the best policy of a pair takes each of its actions while the first (`use[2 * action]`) or the second member is true, each
 * time counted by what its money is then to what it is at most (`share`, laid out like the money). This is the gradient of the pair's
 * value by the money of its actions, per weight. */
export function countUses(game: PairGame, pair: number, share: ActionMoney, work: PairWork, use: Float64Array): void {
  const { weight, first, second, actionsOf, resultsOf, shift, lower: low, upper } = game;
  const { best, hasMass } = work;
  let { mass, next } = work;
  const [a, b] = [weight[first[pair]!]!, weight[second[pair]!]!];
  use.fill(0, 2 * actionsOf[pair]!, 2 * actionsOf[pair + 1]!);
  const start = mass[0]!.fill(0);
  hasMass.fill(0);
  hasMass[0] = 1;
  const position = gridPosition(Math.log(a / b));
  if (position < 0) start[0] = a / ODDS[0]!;
  else if (position >= GRID - 1) start[GRID - 1] = b;
  else {
    const whole = Math.floor(position);
    const up = upperWeight(position - whole);
    start[whole] = b * (1 - up);
    start[whole + 1] = b * up;
  }
  // a bit for states that have mass now, another for those that will
  for (let step = 0; step < MOST_STEPS; step += 1) {
    let goesOn = false;
    for (let from = 0; from < PAIR_STATES; from += 1) {
      if ((hasMass[from]! & 1) === 0) continue;
      const phase = Math.floor(from / LAYERS);
      const at = (pair * PAIR_STATES + from) * GRID;
      const row = mass[from]!;
      for (let g = 0; g < GRID; g += 1) {
        const m = row[g]!;
        if (m <= LOST_MASS * b && m * ODDS[g]! <= LOST_MASS * a) continue;
        const action = best[at + g]!;
        use[2 * action]! += m * ODDS[g]! * share[4 * action + ofFirst(phase)]!;
        use[2 * action + 1]! += m * share[4 * action + ofSecond(phase)]!;
        const to = nextState(game, work, action, from);
        if (to === ENDS) continue;
        goesOn = true;
        const onto = next[to]!;
        if ((hasMass[to]! & 2) === 0) {
          hasMass[to]! |= 2;
          onto.fill(0);
        }
        for (let result = resultsOf[action]!; result < resultsOf[action + 1]!; result += 1) {
          const point = g + shift[result]!;
          put(onto, point, m * low[result]!);
          put(onto, point + 1, m * upper[result]!);
        }
      }
    }
    if (!goesOn) break;
    for (let p = 0; p < PAIR_STATES; p += 1) hasMass[p]! >>= 1;
    [mass, next] = [next, mass];
  }
  for (let action = actionsOf[pair]!; action < actionsOf[pair + 1]!; action += 1) {
    use[2 * action]! /= a;
    use[2 * action + 1]! /= b;
  }
}

function put(mass: Float64Array, point: number, m: number): void {
  if (point < 0) mass[0]! += m * (ODDS[0]! / ODDS[-point]!);
  else if (point >= GRID) mass[GRID - 1]! += m;
  else mass[point]! += m;
}
