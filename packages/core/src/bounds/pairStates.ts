import { GRID, MARGIN, ODDS } from './oddsGrid.ts';
import { EFFECT, PHASES, type PairGame } from './pairGame.ts';

/** Tests of a pair that are remembered once they are done, at most; others may be repeated. */
export const REMEMBERED = 3;
/** States of what is remembered. */
export const LAYERS: number = 1 << REMEMBERED;
/** States of a pair: its phase, and which of the remembered tests are done. */
export const PAIR_STATES: number = PHASES * LAYERS;

/** The state of a pair, as the number of its grid among those of the pair. */
export function pairStateOf(phase: number, done: number): number {
  return phase * LAYERS + done;
}

// Phases after a repair come first: the first phase leads to them.
export const ORDER = [1, 2, 0] as const;

/** Money of every action, at [action * 4 + ...]: of the first and of the second member, then of both after a repair touched them. */
export type ActionMoney = Float64Array;

/** Where the money of the first, of the second member lies in a phase. */
export function ofFirst(phase: number): number {
  return phase === 1 ? 2 : 0;
}

export function ofSecond(phase: number): number {
  return phase === 2 ? 3 : 1;
}

/** What solving pairs needs besides the game; made once, overwritten by every call. */
export interface PairWork {
  /** action -> which of its pair's remembered tests it is, or -1. */
  readonly memory: Int8Array;
  /** pair -> tests it remembers. */
  readonly remembers: Uint8Array;
  /** Actions of the pair at hand: tests that may be repeated; all others. */
  readonly repeatable: Int32Array;
  readonly others: Int32Array;
  /** action -> 1 where it was worth while lately. */
  readonly isActive: Uint8Array;
  /** (pair * PAIR_STATES + state) * GRID + point -> action that is best there. */
  readonly best: Int32Array;
  /** Money of the last call. */
  readonly before: Float64Array;
  /** Values with their margins, by state. */
  readonly padded: readonly Float64Array[];
  readonly trial: Float64Array;
  readonly mass: readonly Float64Array[];
  readonly next: readonly Float64Array[];
  /** state -> 1 where there is mass. */
  readonly hasMass: Uint8Array;
}

/** Room for a game's pairs, with nothing remembered. */
export function createPairWork({ first, actionsOf, resultsOf }: PairGame): PairWork {
  let most = 0;
  for (let pair = 0; pair < first.length; pair += 1) most = Math.max(most, actionsOf[pair + 1]! - actionsOf[pair]!);
  const rows = (length: number): Float64Array[] => Array.from({ length: PAIR_STATES }, () => new Float64Array(length));
  return {
    memory: new Int8Array(resultsOf.length - 1).fill(-1),
    remembers: new Uint8Array(first.length),
    repeatable: new Int32Array(most),
    others: new Int32Array(most),
    isActive: new Uint8Array(resultsOf.length - 1),
    best: new Int32Array(first.length * PAIR_STATES * GRID),
    before: new Float64Array(4 * resultsOf.length),
    padded: rows(GRID + 2 * MARGIN + 1),
    trial: new Float64Array(GRID),
    mass: rows(GRID),
    next: rows(GRID),
    hasMass: new Uint8Array(PAIR_STATES),
  };
}

/** Remembers `most` tests of a pair, those that its policy takes most often. Its values have to be found from the start again. */
export function rememberMostUsed(
  { weight, first, second, actionsOf, effect }: PairGame,
  pair: number,
  most: number,
  use: Float64Array,
  { memory, remembers, before }: PairWork,
): void {
  const [from, to] = [actionsOf[pair]!, actionsOf[pair + 1]!];
  const [a, b] = [weight[first[pair]!]!, weight[second[pair]!]!];
  const often = (action: number): number => use[2 * action]! * a + use[2 * action + 1]! * b;
  const used: number[] = [];
  for (let action = from; action < to; action += 1)
    if (effect[action] === EFFECT.test && often(action) > 0) used.push(action);
  used.sort((c, d) => often(d) - often(c));
  memory.fill(-1, from, to);
  used.slice(0, most).forEach((action, at) => (memory[action] = at));
  remembers[pair] = Math.min(most, used.length);
  before.fill(0, 4 * from, 4 * to);
}

export const ENDS = -1;

/** State to which an action leads from another; `ENDS` where it ends the confusion. */
export function nextState(
  { effect, resultsOf }: PairGame,
  { memory }: PairWork,
  action: number,
  state: number,
): number {
  if (resultsOf[action] === resultsOf[action + 1]) return ENDS;
  if (effect[action] === EFFECT.test) return memory[action]! < 0 ? state : state | (1 << memory[action]!);
  return state < LAYERS ? effect[action]! * LAYERS + state : ENDS;
}

/** Whether an action can be taken in a state. */
export function isAvailable({ phases }: PairGame, { memory }: PairWork, action: number, state: number): boolean {
  if ((phases[action]! & (1 << Math.floor(state / LAYERS))) === 0) return false;
  return memory[action]! < 0 || (state & (1 << memory[action]!)) === 0;
}

/** Expected value after the result of an action, at every point. */
export function expectedAfter(game: PairGame, action: number, padded: Float64Array, trial: Float64Array): void {
  const { resultsOf, shift, lower: low, upper } = game;
  const to = resultsOf[action + 1]!;
  let result = resultsOf[action]!;
  // two at a time: most tests have two results
  for (let isFirst = true; result < to || isFirst; isFirst = false) {
    const from = result < to ? MARGIN + shift[result]! : 0;
    const down = result < to ? low[result]! : 0;
    const up = result < to ? upper[result]! : 0;
    result += 1;
    const other = result < to ? MARGIN + shift[result]! : 0;
    const otherDown = result < to ? low[result]! : 0;
    const otherUp = result < to ? upper[result]! : 0;
    result += 1;
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
export function padValues(values: Float64Array, at: number, padded: Float64Array): void {
  const ratio = ODDS[0]! / ODDS[1]!;
  let below = values[at]!;
  for (let g = MARGIN - 1; g >= 0; g -= 1) padded[g] = below *= ratio;
  for (let g = 0; g < GRID; g += 1) padded[MARGIN + g] = values[at + g]!;
  padded.fill(values[at + GRID - 1]!, MARGIN + GRID);
}
