import type { Turns } from '../turns/turns.ts';
import { untilAborted } from '../turns/untilAborted.ts';
import type { Action } from '../problem/action.ts';
import { allowedActions } from '../problem/allowedActions.ts';
import type { DecisionProblem, DecisionState } from '../problem/decisionProblem.ts';
import { makeFeasiblePlan, firstOf } from '../bounds/makeFeasiblePlan.ts';
import type { LowerBound } from '../bounds/lowerBound.ts';
import { makeLowerBoundInTurns } from '../bounds/makeLowerBound.ts';
import { costOfKnowing, makePerfectInformation } from '../bounds/makePerfectInformation.ts';
import { takeAction } from '../problem/takeAction.ts';
import { isOption, type SearchNode, type SearchOption } from './searchNode.ts';
import {
  certifiedGap,
  makeSolver,
  type Grounds,
  type Policy,
  type Solution,
  type Solver,
  type SolverOptions,
  type SolverProgress,
} from './solver.ts';

const DEFAULT_STEPS = 300;
// Before the stronger bound is made.
const QUICK_STEPS = 20;
// Actions of one state that are looked at in one turn.
const AT_ONCE = 4;
// Two costs closer than this share are the same to a person who pays them.
const SAME = 1e-9;
// By turns: along the least lower bounds (to raise the bound), and along good plans, with this much curiosity for neglected ones. The
// curiosity is a share of the distance between a state's bounds.
const TURNS = ['bound', 0, 0.05, 0.15, 0.05, 0] as const;
type Turn = (typeof TURNS)[number];

/** Anytime search between bounds: every state has a cost below which no policy can fall and the cost of a plan that exists; the search
 * widens the tree where the two are furthest apart along the most promising actions, until they meet or the budget ends. Returns a plan
 * with its certified gap at any time.
 *
 * One step examines one state: all its actions, with bounds for everything they lead to; the stronger bound, which takes time, only along
 * the least lower bounds. States reached on different ways are shared. Default: 300 steps.
 * Source: AO*, Martelli & Montanari 1973, IJCAI 3:1-11; trials down the most promising action towards the largest weighted excess:
 * Smith & Simmons 2004, UAI 20:520-527 (heuristic search value iteration). Turns that refine plans are ours. */
export const boundedSearch: Solver = makeSolver('bounded-search', (problem, options) =>
  searchInTurns(problem, options, () => makeLowerBoundInTurns(problem)),
);

/** The same search as it runs: a solution after 1, 2, 4, 8 ... steps and at the end. For showing plans while it searches: each solution
 * replaces the one before, whose policy has grown with it. It does not give way between solutions, see `boundedSearch.inTurns`.
 * @throws OptionError at once
 * @example [...improvingSolutions(problem)].at(-1)?.progress.upperBound // 108 */
export function improvingSolutions(problem: DecisionProblem, options: SolverOptions = {}): Generator<Solution> {
  return shown(boundedSearch.inTurns(problem, options));
}

function* shown(turns: Turns<Solution, Solution>): Generator<Solution> {
  for (;;) {
    const { done, value } = turns.next();
    if (value !== undefined) yield value;
    if (done === true) return;
  }
}

/** The same search with another lower bound (admissible, or the gap certifies nothing): perfect information serves for the first few
 * steps, so that a plan is there at once; then `strongerBound` is made, when given. Gives way after every step and as often as the bound
 * does while it is made, with a solution after 1, 2, 4, 8 ... steps. */
export function searchInTurns(
  problem: DecisionProblem,
  options: SolverOptions,
  strongerBound?: () => Turns<LowerBound>,
): Turns<Solution, Solution> {
  return createSearch(problem, strongerBound).go(options);
}

/** A search that can be asked again: it goes on from what it has. */
export interface Search {
  /** What it knows of the start. */
  readonly root: SearchNode;
  /** Everything that can be done at the start with bounds of what it would cost, also what cannot be best any more; empty before the first
   * step. */
  readonly firstSteps: () => readonly SearchOption[];
  /** States examined. */
  readonly walked: () => number;
  /** Nothing is left to find. */
  readonly isExact: () => boolean;
  /** Searches until it has examined `steps` states in all, counted from its beginning. */
  readonly go: (options: SolverOptions) => Turns<Solution, Solution>;
}

/** Begins a search, see `searchInTurns`; examines nothing yet. */
export function createSearch(problem: DecisionProblem, strongerBound?: () => Turns<LowerBound>): Search {
  const knowing = makePerfectInformation(problem);
  let bounding: Turns<LowerBound> | undefined;
  let lowerBound: LowerBound | undefined;
  const nodes = new Map<string, SearchNode>();
  const upperPlan = makeFeasiblePlan(problem);

  const nodeAt = (state: DecisionState): SearchNode => {
    const known = nodes.get(state.key);
    if (known !== undefined) return known;
    const plan = upperPlan(state);
    const upper = plan.expectedCost;
    const lower = Math.min(costOfKnowing(knowing(state.open, state.tried), state), upper);
    const node = { state, lower, upper, plan, options: undefined, isStrong: false };
    nodes.set(state.key, node);
    return node;
  };
  const strengthen = (node: SearchNode): void => {
    if (lowerBound === undefined || node.isStrong) return;
    node.isStrong = true;
    node.lower = Math.min(Math.max(node.lower, lowerBound(node.state)), node.upper);
    if (node.options !== undefined) update(node);
  };

  const root = nodeAt(problem.start);
  let firstSteps: readonly SearchOption[] = [];
  let walking: Turns<true> | undefined;
  let walked = 0;
  let shown = 1;
  const isExact = (): boolean => root.upper - root.lower <= SAME * root.upper;
  const progress = (): SolverProgress => ({
    best: actionOf(root),
    lowerBound: root.lower,
    upperBound: root.upper,
    certifiedGap: certifiedGap(root.lower, root.upper),
    steps: walked,
  });
  const policy: Policy = (state) => actionOf(nodes.get(state.key) ?? { plan: upperPlan(state) });
  const groundsAt = ({ key }: DecisionState): Grounds => {
    const node = nodes.get(key);
    if (node === undefined) return 'none';
    if (isOption(node.plan) || node.upper - node.lower <= SAME * node.upper) return 'search';
    return node.options === undefined ? 'none' : 'look';
  };
  const solution = (): Solution => ({ solver: 'bounded-search', policy, progress: progress(), groundsAt });
  /** One step along one way down. */
  const walk = function* (): Turns<void> {
    let turn: Turn = TURNS[walked % TURNS.length]!;
    // the bound is not worth following before it is the stronger one
    if (turn === 'bound' && walked > 0 && walked < QUICK_STEPS && strongerBound !== undefined) turn = 0;
    let path = descend(root, turn);
    // a way without doubt teaches nothing; the way of the least lower bound has some, or bounds that another way made better
    if (turn !== 'bound' && path.at(-1)!.options !== undefined) path = descend(root, (turn = 'bound'));
    const last = path.at(-1)!;
    if (last.options === undefined) {
      last.options = yield* expand(problem, last.state, nodeAt);
      if (last === root) firstSteps = last.options;
      walked += 1;
    }
    if (turn === 'bound') {
      for (const { options } of path) {
        for (const { branches } of options!) for (const { node } of branches) strengthen(node);
      }
    }
    for (const above of path.reverse()) update(above);
  };

  return {
    root,
    firstSteps: () => {
      for (const option of firstSteps) updateOption(option);
      return firstSteps;
    },
    walked: () => walked,
    isExact,
    go: function* ({ steps = DEFAULT_STEPS, signal, onImprove }) {
      let reportedGap = Infinity;
      while (walked < steps && signal?.aborted !== true && !isExact()) {
        if (walked >= QUICK_STEPS && strongerBound !== undefined && lowerBound === undefined) {
          // what was begun of it is kept for the next time
          lowerBound = yield* untilAborted((bounding ??= strongerBound()), signal);
          if (lowerBound === undefined) break;
          for (const { branches } of root.options!) for (const { node } of branches) strengthen(node);
          strengthen(root);
        }
        // a step in the middle of which it was stopped is gone on with
        const isWhole = yield* untilAborted((walking ??= whole(walk())), signal);
        if (isWhole === true) walking = undefined;
        if (onImprove !== undefined && certifiedGap(root.lower, root.upper) < reportedGap - 1e-4) {
          reportedGap = certifiedGap(root.lower, root.upper);
          onImprove(progress());
        }
        if (isWhole !== true) break;
        const isShown = walked >= shown && walked < steps;
        if (isShown) shown = 2 * walked;
        yield isShown ? solution() : undefined;
      }
      return solution();
    },
  };
}

function* whole(turns: Turns<void>): Turns<true> {
  yield* turns;
  return true;
}

function actionOf({ plan }: Pick<SearchNode, 'plan'>): Action {
  return isOption(plan) ? plan.action : firstOf(plan);
}

/** The way down to the next state to examine; it ends at an examined one where no doubt is left. */
function descend(root: SearchNode, turn: Turn): SearchNode[] {
  const path = [root];
  for (;;) {
    const node = path.at(-1)!;
    // no option is left where the plan without any is as cheap as can be
    if (node.options === undefined || node.options.length === 0) return path;
    const option = turn === 'bound' ? leastLower(node.options) : mostCurious(node, node.options, turn);
    option.visits += 1;
    const next = widest(option);
    if (next === undefined) return path;
    path.push(next);
  }
}

/** All that can be done at a state, giving way after every few of them. */
function* expand(
  problem: DecisionProblem,
  state: DecisionState,
  nodeAt: (state: DecisionState) => SearchNode,
): Turns<SearchOption[]> {
  const options: SearchOption[] = [];
  for (const action of allowedActions(problem, state)) {
    const { cost, needless, branches } = takeAction(problem, state, action);
    options.push({
      action,
      money: cost.money + needless,
      branches: branches.flatMap(({ probability, state: then }) =>
        then === undefined ? [] : [{ probability, node: nodeAt(then) }],
      ),
      lower: 0,
      upper: 0,
      visits: 0,
    });
    if (options.length % AT_ONCE === 0) yield;
  }
  return options;
}

/** Bounds of a node from its options; never worse than before. Options that cannot be best any more are dropped. */
function update(node: SearchNode): void {
  let lower = Infinity;
  for (const option of node.options!) {
    updateOption(option);
    if (option.upper < node.upper) {
      node.upper = option.upper;
      node.plan = option;
    }
    lower = Math.min(lower, option.lower);
  }
  node.lower = Math.min(Math.max(node.lower, lower), node.upper);
  if (node.options!.length > 1)
    node.options = node.options!.filter((option) => option.lower <= node.upper || option === node.plan);
}

function updateOption(option: SearchOption): void {
  option.lower = option.money;
  option.upper = option.money;
  for (const { probability, node: then } of option.branches) {
    option.lower += probability * then.lower;
    option.upper += probability * then.upper;
  }
}

function leastLower(options: readonly SearchOption[]): SearchOption {
  return options.reduce((a, b) => (b.lower < a.lower ? b : a));
}

/** The cheapest plan, or one that was followed too seldom to know. Confidence bounds as in Kocsis & Szepesvari 2006, ECML 282-293. */
function mostCurious(node: SearchNode, options: readonly SearchOption[], curiosity: number): SearchOption {
  let visits = 1;
  for (const option of options) visits += option.visits;
  const scale = curiosity * (node.upper - node.lower) * Math.sqrt(Math.log(visits));
  const hope = (option: SearchOption): number => option.upper - scale / Math.sqrt(1 + option.visits);
  return options.reduce((a, b) => (hope(b) < hope(a) ? b : a));
}

/** Where the doubt weighs most; `undefined` when there is none. */
function widest({ branches }: SearchOption): SearchNode | undefined {
  let most = 0;
  let at: SearchNode | undefined;
  for (const { probability, node } of branches) {
    const doubt = probability * (node.upper - node.lower);
    if (doubt > most) [most, at] = [doubt, node];
  }
  return at;
}
