import { GRID, ODDS } from './oddsGrid.ts';
import { EFFECT, PHASES, type PairGame } from './pairGame.ts';
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

/** How closely values are iterated: an improvement by less than the share `noticed` is none; `everywhere` looks at every test at every
 * state, else only at the first, and elsewhere at those that were worth while lately. `certifyPair` makes up for the rest. */
export interface Precision {
  readonly noticed: number;
  readonly sweeps: number;
  readonly everywhere: boolean;
}

const MOST_GROWTH = 3;

/** Least cost of ending one pair's confusion, at every state and point of the grid (`values`, from `pair * PAIR_STATES * GRID` on), where
 * every action costs the pair's share of its price, and tests can be repeated unless they are remembered: value iteration from above.
 * Source: Wald 1947, Sequential Analysis; chords between points as in Lovejoy 1991, Operations Research 39:162-175. */
export function solvePair(
  game: PairGame,
  pair: number,
  money: ActionMoney,
  work: PairWork,
  values: Float64Array,
  precision: Precision,
): void {
  const { actionsOf, effect, resultsOf } = game;
  const { trial, best, isActive, memory, padded, repeatable, others } = work;
  const [from, to] = [actionsOf[pair]!, actionsOf[pair + 1]!];
  const layers = 1 << work.remembers[pair]!;
  let repeatables = 0;
  let rest = 0;
  for (let action = from; action < to; action += 1) {
    if (effect[action] === EFFECT.weakTest) continue;
    const isRepeatable =
      effect[action] === EFFECT.test && memory[action]! < 0 && resultsOf[action] !== resultsOf[action + 1];
    if (isRepeatable) repeatable[repeatables++] = action;
    else others[rest++] = action;
  }
  // what was found for other money serves as a start from above, when enlarged as much as the money of the actions in use
  const growth = growthOf(actionsOf, pair, money, work);
  for (const phase of ORDER) {
    for (let done = layers - 1; done >= 0; done -= 1) {
      const state = pairStateOf(phase, done);
      const at = (pair * PAIR_STATES + state) * GRID;
      const here = padded[state]!;
      for (let g = 0; g < GRID; g += 1) values[at + g] = growth < MOST_GROWTH ? growth * values[at + g]! : Infinity;
      for (let i = 0; i < rest; i += 1) {
        const action = others[i]!;
        if (!isAvailable(game, work, action, state)) continue;
        const next = nextState(game, work, action, state);
        if (next === ENDS) trial.fill(0);
        else expectedAfter(game, action, padded[next]!, trial);
        lower(values, at, best, action, money, phase, trial, 0);
      }
      padValues(values, at, here);
      for (let sweep = 0; sweep < precision.sweeps; sweep += 1) {
        let improved = false;
        // those that were worth while lately, and when they are of no more use, the rest
        for (let active = 1; active >= 0 && !improved; active -= 1) {
          if (active === 0 && state !== 0 && !precision.everywhere) break;
          for (let i = 0; i < repeatables; i += 1) {
            const action = repeatable[i]!;
            if (isActive[action] !== active) continue;
            expectedAfter(game, action, here, trial);
            if (!lower(values, at, best, action, money, phase, trial, precision.noticed)) continue;
            padValues(values, at, here);
            isActive[action] = 1;
            improved = true;
          }
        }
        if (!improved) break;
      }
    }
  }
  isActive.fill(0, from, to);
  for (let phase = 0; phase < PHASES; phase += 1) {
    const at = (pair * PAIR_STATES + pairStateOf(phase, 0)) * GRID;
    for (let i = 0; i < layers * GRID; i += 1) isActive[best[at + i]!] = 1;
  }
}

/** Takes an action wherever it is cheaper than what is known by more than the share `noticed`. */
function lower(
  values: Float64Array,
  at: number,
  best: Int32Array,
  action: number,
  money: ActionMoney,
  phase: number,
  then: Float64Array,
  noticed: number,
): boolean {
  const [u, v] = [money[4 * action + ofFirst(phase)]!, money[4 * action + ofSecond(phase)]!];
  const keep = 1 - noticed;
  let improved = false;
  for (let g = 0; g < GRID; g += 1) {
    const cost = u * ODDS[g]! + v + then[g]!;
    if (cost >= values[at + g]! * keep) continue;
    values[at + g] = cost;
    best[at + g] = action;
    improved = true;
  }
  return improved;
}

function growthOf(actionsOf: Int32Array, pair: number, money: ActionMoney, { isActive, before }: PairWork): number {
  let growth = 0;
  for (let action = actionsOf[pair]!; action < actionsOf[pair + 1]!; action += 1) {
    for (let i = 4 * action; i < 4 * action + 4; i += 1) {
      if (isActive[action] === 1 && money[i]! > growth * before[i]!) growth = money[i]! / before[i]!;
      before[i] = money[i]!;
    }
  }
  return growth === 0 ? Infinity : growth;
}
