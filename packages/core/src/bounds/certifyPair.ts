import { GRID, ODDS } from './oddsGrid.ts';
import { EFFECT, type PairGame } from './pairGame.ts';
import {
  expectedAfter,
  ENDS,
  isAvailable,
  nextState,
  ofFirst,
  ofSecond,
  ORDER,
  padValues,
  pairStateOf,
  PAIR_STATES,
  type ActionMoney,
  type PairWork,
} from './pairStates.ts';

/** Scales a pair's values down until nothing lowers them by more than its share of the action's price, at any point: then nowhere, because the value is
 * concave and costs are linear. A remembered test that was done otherwise lowers nothing. */
export function certifyPair(
  game: PairGame,
  pair: number,
  money: ActionMoney,
  work: PairWork,
  values: Float64Array,
): void {
  const { actionsOf } = game;
  const { trial, padded } = work;
  const count = work.remembers[pair]!;
  for (const phase of ORDER) {
    for (let done = (1 << count) - 1; done >= 0; done -= 1) {
      const state = pairStateOf(phase, done);
      const at = (pair * PAIR_STATES + state) * GRID;
      padValues(values, at, padded[state]!);
      let scale = 1;
      for (let action = actionsOf[pair]!; action < actionsOf[pair + 1]!; action += 1) {
        if (!isAvailable(game, work, action, state)) continue;
        const next = nextState(game, work, action, state);
        if (next === ENDS) trial.fill(0);
        else expectedAfter(game, action, padded[next]!, trial);
        const [u, v] = [money[4 * action + ofFirst(phase)]!, money[4 * action + ofSecond(phase)]!];
        for (let g = 0; g < GRID; g += 1) {
          const [value, then] = [values[at + g]!, trial[g]!];
          const cost = u * ODDS[g]! + v;
          if (value - then > cost)
            scale = Math.min(scale, next === state ? cost / (value - then) : (cost + then) / value);
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
      padValues(values, at, padded[state]!);
    }
  }
}

/** What weak tests lower a certified pair's value by at most, as money of both members: added to `charges` by pool. Of all lines above the
 * fall the one that asks the same of both members at the start. */
export function chargeWeakTests(
  game: PairGame,
  pair: number,
  work: PairWork,
  values: Float64Array,
  charges: Float64Array,
): void {
  const { weight, first, second, actionsOf, effect, pools } = game;
  const { trial, padded } = work;
  const slope = weight[second[pair]!]! / weight[first[pair]!]!;
  const layers = 1 << work.remembers[pair]!;
  for (let action = actionsOf[pair]!; action < actionsOf[pair + 1]!; action += 1) {
    if (effect[action] !== EFFECT.weakTest) continue;
    let money = 0;
    for (const phase of ORDER) {
      for (let done = 0; done < layers; done += 1) {
        const state = pairStateOf(phase, done);
        const at = (pair * PAIR_STATES + state) * GRID;
        padValues(values, at, padded[state]!);
        expectedAfter(game, action, padded[state]!, trial);
        for (let g = 0; g < GRID; g += 1) {
          const fall = values[at + g]! - trial[g]!;
          if (fall > money * (slope * ODDS[g]! + 1)) money = fall / (slope * ODDS[g]! + 1);
        }
      }
    }
    charges[pools[2 * action]!]! += slope * money;
    charges[pools[2 * action + 1]!]! += money;
  }
}
