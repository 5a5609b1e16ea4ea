import type { Action } from '../decision/problem/action.ts';
import type { DecisionProblem, DecisionState, EvidenceSet } from '../decision/problem/decisionProblem.ts';
import type { Policy } from '../decision/solvers/solver.ts';
import { takeAction } from '../decision/problem/takeAction.ts';
import { seededRandom, type Random } from '../distributions/random.ts';
import type { CaseRun } from './caseRun.ts';

/** What is simulated. */
export interface SimulationPlan {
  /** Name of the policy in the rows. */
  readonly policy: string;
  /** Makes the problem as it is believed to be, and the policy for it. Called again now and then, to let go of what was remembered. */
  readonly prepare: () => { readonly problem: DecisionProblem; readonly decide: Policy };
  /** The problem as it really is, with the same tests and repairs in the same order; default: as it is believed to be. */
  readonly truth?: DecisionProblem;
  /** Number of the first case and of cases. */
  readonly first?: number;
  readonly cases: number;
  readonly seed: number;
  /** Decisions already made, by key of the state; filled. Share it between runs of one policy on one problem. Default: a new one. */
  readonly decided?: Map<string, Action>;
  /** Access bits whose opening counts as opening the engine. Default: none. */
  readonly bigAccess?: number;
}

// Places decided anew before the problem is prepared again: each remembers its likelihoods, some 50 kB.
const REMEMBERED = 400;

/** Draws cases from a model and runs a policy on them, one row after the other: a pure generator, so that a worker can stop, count and
 * report between cases. Every case has its own generator, made from seed and number: the cause of a case does not depend on the policy.
 *
 * Outcomes are drawn given the true cause and all results so far, exactly as the model says; a repair cures with its chance. What comes
 * out is a property of the model, not of the world. */
export function* simulate(plan: SimulationPlan): Generator<CaseRun> {
  const { policy, prepare, first = 0, cases, seed, bigAccess = 0, decided = new Map<string, Action>() } = plan;
  let prepared = prepare();
  let fresh = 0;
  for (let number = first; number < first + cases; number += 1) {
    if (fresh > REMEMBERED) {
      prepared = prepare();
      fresh = 0;
    }
    const { problem, decide } = prepared;
    const truth = plan.truth ?? problem;
    const remembered: Policy = (state) => {
      const known = decided.get(state.key);
      if (known !== undefined) return known;
      const action = decide(state);
      decided.set(state.key, action);
      fresh += 1;
      return action;
    };
    yield { policy, number, ...runCase(problem, truth, remembered, seededRandom(mix(seed, number)), bigAccess) };
  }
}

function runCase(
  problem: DecisionProblem,
  truth: DecisionProblem,
  decide: Policy,
  random: Random,
  bigAccess: number,
): Omit<CaseRun, 'policy' | 'number'> {
  const cause = draw(truth.start.posterior, random);
  const needed = accessNeeded(truth, cause);
  const count = { cost: 0, minutes: 0, steps: 0, tests: 0, wrongRepairs: 0, needlessOpenings: 0 };
  const trueCause = truth.causes[cause]!;
  let state: DecisionState = problem.start;
  let evidence: EvidenceSet = truth.start.evidence;
  for (;;) {
    const action = decide(state);
    const { cost, branches } = takeAction(problem, state, action);
    count.steps += 1;
    if (action.kind === 'refer') {
      const total = count.cost + problem.repairFacts.referralCost[cause]!;
      return { trueCause, ...count, cost: total, end: 'referred' };
    }
    count.cost += cost.money;
    count.minutes += cost.minutes;
    const access = action.kind === 'test' ? problem.testAccess[action.test]! : problem.repairAccess[action.repair]!;
    count.needlessOpenings += bitCount(access & ~state.open & bigAccess & ~needed);
    let outcome: string;
    if (action.kind === 'test') {
      count.tests += 1;
      const drawn = drawOutcome(truth, evidence, action.test, cause, random);
      evidence = truth.evidenceAfter(evidence, action.test, drawn);
      outcome = problem.tests[action.test]!.outcomes[drawn]!;
    } else {
      const success = truth.repairFacts.cures[action.repair]!.find((cure) => cure.cause === cause)?.success ?? 0;
      if (random() < success) return { trueCause, ...count, end: 'cured' };
      count.wrongRepairs += 1;
      outcome = 'not-cured';
    }
    const next = branches.find((branch) => branch.outcome === outcome)?.state;
    // what is believed impossible has happened (the truth differs from the belief): hand it on
    if (next === undefined) {
      return { trueCause, ...count, cost: count.cost + problem.repairFacts.referralCost[cause]!, end: 'referred' };
    }
    state = next;
  }
}

function drawOutcome(
  truth: DecisionProblem,
  evidence: EvidenceSet,
  test: number,
  cause: number,
  random: Random,
): number {
  const { length } = truth.tests[test]!.outcomes;
  return draw(truth.outcomeTable(evidence, test).subarray(cause * length, (cause + 1) * length), random);
}

function draw(weights: Float64Array, random: Random): number {
  let rest = random() * weights.reduce((a, b) => a + b, 0);
  for (let at = 0; at < weights.length; at += 1) {
    rest -= weights[at]!;
    if (rest < 0) return at;
  }
  return weights.findLastIndex((weight) => weight > 0);
}

/** Access that some repair of the cause needs. */
function accessNeeded({ repairFacts, repairAccess }: DecisionProblem, cause: number): number {
  return repairFacts.cures.reduce(
    (bits, cures, repair) => (cures.some((cure) => cure.cause === cause) ? bits | repairAccess[repair]! : bits),
    0,
  );
}

function bitCount(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count += 1;
  return count;
}

/** A seed of its own for every case (integer hash, Wang 2007; constants as published). */
function mix(seed: number, number: number): number {
  let key = (seed * 0x9e3779b1 + number) >>> 0;
  key = ~key + (key << 15);
  key ^= key >>> 12;
  key += key << 2;
  key ^= key >>> 4;
  key = Math.imul(key, 2057);
  key ^= key >>> 16;
  return key >>> 0;
}
