import { LARGEST_NUMBER } from '../validation/largestNumber.ts';
import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import type { Action } from '../problem/action.ts';
import type { DecisionProblem, DecisionState, StepCost } from '../problem/decisionProblem.ts';
import { takeAction, type Transition } from '../problem/takeAction.ts';
import type { Policy } from '../solvers/solver.ts';
import { createRandom } from '../distributions/random.ts';
import type { CaseRun } from './caseRun.ts';
import { hashNumber } from './hashNumber.ts';
import type { DrawnCase, Truth } from './truth.ts';
import { makeTruthOfProblem } from './makeTruthOfProblem.ts';

/** What is simulated. */
export interface SimulationPlan {
  /** Name of the policy in the rows. */
  readonly policy: string;
  /** Makes the problem as it is believed to be, and the policy for it. Called again now and then, to let go of what was remembered. */
  readonly prepare: () => { readonly problem: DecisionProblem; readonly decide: Policy };
  /** The world in which a case happens, by its number, with the same tests and repairs in the same order as the problem; default: as it
   * is believed to be. */
  readonly truthOf?: (number: number) => Truth;
  /** Number of the first case (default 0) and of cases. */
  readonly first?: number;
  readonly cases: number;
  readonly seed: number;
  /** Only a share of the cases, for a worker: those that come to this one of `of` parts of the tree of states. All parts together are
   * exactly the whole. Default: everything. */
  readonly part?: { readonly index: number; readonly of: number };
}

// States before the problem is prepared again: each remembers its likelihoods, some 50 kB.
const REMEMBERED = 400;
// Steps after which cases belong to a part; the few states before it are visited for every part.
const COMMON_STEPS = 3;
// Numbers of repairs, tests and sleeping faults must not share a draw.
const REPAIR_DRAWS = 1 << 16;
const SLEEP_DRAWS = 1 << 17;

type Counted = Exclude<keyof CaseRun, 'policy' | 'number' | 'truth' | 'trueCause' | 'end'>;

interface RunningCase {
  readonly number: number;
  readonly key: number;
  readonly truth: Truth;
  readonly drawn: DrawnCase;
  readonly needed: number;
  readonly count: { -readonly [K in Counted]: number };
}

interface SharedState {
  readonly state: DecisionState;
  readonly steps: number;
  readonly cases: readonly RunningCase[];
}

const planSchema = z.strictObject({
  policy: z.string(),
  prepare: optionSchemas.callback,
  truthOf: z.optional(optionSchemas.callback),
  first: z.optional(optionSchemas.whole(0, LARGEST_NUMBER)),
  cases: optionSchemas.whole(0, LARGEST_NUMBER),
  seed: optionSchemas.seed,
  part: z.optional(
    z.strictObject({ index: optionSchemas.whole(0, LARGEST_NUMBER), of: optionSchemas.whole(1, LARGEST_NUMBER) }),
  ),
});

/** Draws cases and runs a policy on them: a pure generator, so that a worker can stop, count and report between cases. All cases walk
 * down the tree of states together: belief, predictives and decision of a state are made once for all cases that come through it,
 * whatever world they happen in, and are let go of when the last one has passed. Rows come in the order of the tree, not of the numbers.
 *
 * A case depends on the seed and its number alone: its cause, the state of its engine, whether the fault sleeps when a test needs it, and what each test and repair would show are the
 * same under every policy, which makes differences between policies sharp (common random numbers). What comes out is a property of the
 * model, not of the world.
 * @throws OptionError at once, not with the first row
 * @example
 * ```ts
 * const { policy } = boundedSearch.solve(problem);
 * const runs = [...simulate({ policy: 'search', prepare: () => ({ problem, decide: policy }), cases: 3, seed: 1 })];
 * runs.map(({ number, trueCause, cost }) => [number, trueCause, cost]) // [[0, 'cause-1', 120], [2, 'cause-1', 120], [1, 'cause-2', 90]]
 * ``` */
export function simulate(plan: SimulationPlan): Generator<CaseRun> {
  checkOptions(planSchema, plan);
  if (plan.part !== undefined) {
    checkOptions(z.looseObject({ index: optionSchemas.whole(0, plan.part.of - 1) }), plan.part, '/part');
  }
  return walk(plan);
}

function* walk(plan: SimulationPlan): Generator<CaseRun> {
  const { policy, prepare, part = { index: 0, of: 1 } } = plan;
  let { problem, decide } = prepare();
  let fresh = 0;
  const stack: SharedState[] = [{ state: problem.start, steps: 0, cases: drawCases(plan, problem) }];
  for (let shared = stack.pop(); shared !== undefined; shared = stack.pop()) {
    const { state, steps, cases } = shared;
    const isMine = steps > COMMON_STEPS || hashText(state.key) % part.of === part.index;
    if (steps === COMMON_STEPS && !isMine) continue;
    if (fresh === REMEMBERED) {
      ({ problem, decide } = prepare());
      fresh = 0;
    }
    fresh += 1;
    const action = decide(state);
    const transition = takeAction(problem, state, action);
    const arriving = new Map<string, RunningCase[]>();
    for (const one of cases) {
      const outcome = advance(problem, state, action, transition, one);
      const next = transition.branches.find((branch) => branch.outcome === outcome);
      if (next?.state !== undefined) {
        const together = arriving.get(outcome);
        if (together === undefined) arriving.set(outcome, [one]);
        else together.push(one);
        continue;
      }
      // what is believed impossible has happened (the world differs from the belief): handed on
      const end = outcome === 'cured' ? 'cured' : 'referred';
      if (end === 'referred') one.count.cost += problem.repairFacts.referralCost[one.drawn.cause]!;
      const { number, truth, count, drawn } = one;
      if (isMine) {
        yield { policy, number, truth: truth.id, trueCause: truth.causes[drawn.cause]!, ...count, end };
      }
    }
    for (const { outcome, state: then } of [...transition.branches].reverse()) {
      const together = arriving.get(outcome);
      if (then !== undefined && together !== undefined) stack.push({ state: then, steps: steps + 1, cases: together });
    }
  }
}

function drawCases({ truthOf, first = 0, cases, seed }: SimulationPlan, problem: DecisionProblem): RunningCase[] {
  const believed = makeTruthOfProblem(problem);
  return Array.from({ length: cases }, (_, at) => {
    const number = first + at;
    const key = hashNumber(seed, number);
    const truth = truthOf === undefined ? believed : truthOf(number);
    const drawn = truth.draw(createRandom(key));
    const count = { cost: 0, minutes: 0, steps: 0, tests: 0, wrongRepairs: 0, needlessOpenings: 0 };
    return { number, key, truth, drawn, needed: truth.accessNeeded(drawn.cause), count };
  });
}

/** Counts one step of one case and says what came of it. */
function advance(
  problem: DecisionProblem,
  state: DecisionState,
  action: Action,
  { cost }: Transition,
  { key, truth, drawn, needed, count }: RunningCase,
): string {
  count.steps += 1;
  if (action.kind === 'refer') return 'referred';
  const paid = action.kind === 'test' ? costOfRun(problem, state, action.test, drawn.cause, key) : cost;
  count.cost += paid.money;
  count.minutes += paid.minutes;
  const access = action.kind === 'test' ? problem.testAccess[action.test]! : problem.repairAccess[action.repair]!;
  count.needlessOpenings += bitCount(access & ~state.open & problem.repairFacts.needless.opens & ~needed);
  if (action.kind === 'test') {
    count.tests += 1;
    const uniform = hashNumber(key, action.test) / 2 ** 32;
    return problem.tests[action.test]!.outcomes[drawn.outcome(action.test, state.evidence, uniform)]!;
  }
  const uniform = hashNumber(key, REPAIR_DRAWS + action.repair) / 2 ** 32;
  if (uniform < truth.cure(action.repair, drawn.cause)) return 'cured';
  count.wrongRepairs += 1;
  return 'not-cured';
}

/** What a test costs in one case: once more where the fault is drawn asleep. */
function costOfRun(problem: DecisionProblem, state: DecisionState, test: number, cause: number, key: number): StepCost {
  const once = problem.testCost(test, state.open);
  const { asleep } = problem.tests[test]!;
  if (asleep === undefined || hashNumber(key, SLEEP_DRAWS + test) / 2 ** 32 >= asleep.chance[cause]!) return once;
  return { money: once.money + asleep.again.money, minutes: once.minutes + asleep.again.minutes };
}

function bitCount(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count += 1;
  return count;
}

function hashText(text: string): number {
  let hash = 0;
  for (let at = 0; at < text.length; at += 1) hash = hashNumber(hash, text.charCodeAt(at));
  return hash;
}
