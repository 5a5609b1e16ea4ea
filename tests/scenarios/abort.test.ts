import { compileModel, parseModel, beliefOf, type Turns } from '@faultodds/core';
import {
  adviceFlips,
  adviceFlipsInTurns,
  credibleRanking,
  credibleRankingInTurns,
  adviceStability,
  adviceStabilityInTurns,
} from '@faultodds/core/doubt';
import {
  boundedSearch,
  costOfPolicy,
  exactDynamicProgramming,
  makeExpectimax,
  improvingSolutions,
  informationPerCost,
  makeLowerBound,
  oneStep,
  compileCaseProblem,
  repairOrder,
  replanning,
  compileTableProblem,
  whatWouldItTake,
  whatWouldItTakeInTurns,
  type Solver,
} from '@faultodds/core/planning';
import { expect, test } from 'vitest';
import { countTurns } from '../fixtures/countTurns.ts';
import { pumpModel } from '../fixtures/pumpModel.ts';

// A signal that is aborted while a computation is at work ends it at the next turn: what is counted is turns, draws and looks at the signal.

const compiled = compileModel(parseModel(pumpModel()));
const facts = { context: {}, observations: [] } as const;
const belief = beliefOf(compiled, facts);
const problem = compileCaseProblem(compiled, belief);
const step = { kind: 'access', access: 'wheel-out' } as const;

/** A signal that somebody aborts; counts how often it was looked at since. */
function stopper(): { readonly aborted: boolean; abort: () => void; looks: () => number } {
  let aborted = false;
  let looks = 0;
  return {
    get aborted() {
      if (aborted) looks += 1;
      return aborted;
    },
    abort: () => void (aborted = true),
    looks: () => looks,
  };
}

/** Aborts after so many turns, and says how many came after that. */
function stopped<Answer>(at: number, ask: (signal: { readonly aborted: boolean }) => Turns<Answer, unknown>) {
  const signal = stopper();
  const { answer, turns } = countTurns(ask(signal), (turn) => {
    if (turn === at) signal.abort();
  });
  return { answer, late: turns - at };
}

test('two thousand draws, aborted after three: an answer from three', () => {
  const { answer, late } = stopped(3, (signal) => credibleRankingInTurns(compiled, facts, { draws: 2000, signal }));
  expect({ draws: answer.draws, late }).toEqual({ draws: 3, late: 0 });
  expect(answer).toEqual(credibleRanking(compiled, facts, { draws: 3 }));
  const advice = stopped(2, (signal) => adviceStabilityInTurns(compiled, facts, {}, { draws: 200, signal }));
  expect({ draws: advice.answer.draws, late: advice.late }).toEqual({ draws: 2, late: 0 });
  expect(advice.answer).toEqual(adviceStability(compiled, facts, {}, { draws: 2 }));
});

test('what would flip the advice ends in the middle of a number, with those found before it', () => {
  const result = { kind: 'result', id: 'r1', test: 'vacuum', outcome: 'strong' } as const;
  const seen = { context: {}, observations: [result] };
  const whole = adviceFlips(compiled, seen, {}, { numbers: 4 });
  const all = countTurns(adviceFlipsInTurns(compiled, seen, {}, { numbers: 4 }));
  expect(all.answer).toEqual(whole);
  expect(whole.length).toBeGreaterThan(0);
  for (const at of [1, 5, all.turns - 1]) {
    const { answer, late } = stopped(at, (signal) => adviceFlipsInTurns(compiled, seen, {}, { numbers: 4, signal }));
    expect(late).toBe(0);
    if (at < 6) expect(answer.length).toBeLessThan(whole.length);
    for (const flip of answer) expect(whole).toContainEqual(flip);
  }
});

test('what it would take keeps its threshold and gives up the search', () => {
  const whole = whatWouldItTake(compiled, belief, {}, step);
  const all = countTurns(whatWouldItTakeInTurns(compiled, belief, {}, step));
  expect(all.answer).toEqual(whole);
  expect(whole.search.examined).toBeGreaterThan(2);
  const at = all.turns - 2;
  const { answer, late } = stopped(at, (signal) => whatWouldItTakeInTurns(compiled, belief, {}, step, { signal }));
  expect(late).toBe(0);
  expect(answer.threshold).toBe(whole.threshold);
});

const solvers: readonly Solver[] = [
  boundedSearch,
  replanning,
  oneStep,
  makeExpectimax({ depth: 3 }),
  exactDynamicProgramming,
  repairOrder,
  informationPerCost,
];
const small = compileTableProblem({
  prior: [0.4, 0.3, 0.2, 0.1],
  tests: [0.9, 0.7, 0.8].map((p, at) => ({
    id: `t${at}`,
    cost: 3 + at,
    outcomeGivenCause: [0, 1, 2, 3].map((cause) => (cause === at ? [p, 1 - p] : [0.2, 0.8])),
  })),
  repairs: [0, 1, 2, 3].map((at) => ({
    id: `r${at}`,
    cost: 40 + 10 * at,
    cures: [0, 1, 2, 3].map((cause) => (cause === at ? 0.9 : 0)),
  })),
  referralCost: [300, 300, 300, 300],
});

test.each(solvers.map((solver) => [solver.id, solver] as const))(
  '%s in turns finds what it finds at once',
  (_, solver) => {
    for (const of of [small, problem]) {
      const options = of === problem ? { steps: 30 } : {};
      const { answer, turns } = countTurns(solver.inTurns(of, options));
      expect(answer.progress).toEqual(solver.solve(of, options).progress);
      expect(turns).toBeGreaterThan(0);
    }
  },
);

test.each([
  ['bounded-search', boundedSearch],
  ['expectimax-3', makeExpectimax({ depth: 3 })],
  ['exact', exactDynamicProgramming],
] as const)('%s, aborted after four states, examines no fifth and has a plan', (_, solver) => {
  const { answer, late } = stopped(4, (signal) => solver.inTurns(small, { signal }));
  expect(answer.progress.steps).toBeLessThanOrEqual(4);
  expect(late).toBe(0);
  // there is a plan, at no more than it is said to cost, or, where it is planned anew at every state, than repairs alone
  const most = Math.max(answer.progress.upperBound, repairOrder.solve(small).progress.upperBound);
  expect(costOfPolicy(small, answer.policy)).toBeLessThanOrEqual(most + 1e-9);
  expect(answer.progress.steps).toBeLessThan(solver.solve(small).progress.steps);
});

test('a search that is told to stop by whom it tells examines no further state', () => {
  const stop = new AbortController();
  const { progress } = boundedSearch.solve(small, { signal: stop.signal, onImprove: () => stop.abort() });
  expect(progress.steps).toBeLessThanOrEqual(2);
  expect([...improvingSolutions(small)].at(-1)!.progress).toEqual(boundedSearch.solve(small).progress);
});

test('the lower bound: aborted while it is made, that of perfect information, with one look more', () => {
  const whole = makeLowerBound(problem)(problem.start);
  const perfect = repairOrder.solve(problem).progress.lowerBound;
  expect(whole).toBeGreaterThan(perfect);
  let asked = 0;
  const signal = {
    get aborted() {
      return (asked += 1) > 3;
    },
  };
  expect(makeLowerBound(problem, { signal })(problem.start)).toBeCloseTo(perfect, 9);
  expect(asked).toBe(4);
});

test('a search that is aborted while its stronger bound is made has the plan it had before', () => {
  const all = countTurns(boundedSearch.inTurns(problem, { steps: 22 }));
  // 20 states come before the bound is made, 2 after it: the rest are turns of the bound
  const before = countTurns(boundedSearch.inTurns(problem, { steps: 20 })).turns;
  expect(all.turns).toBeGreaterThan(1.1 * before + 10);
  const { answer, late } = stopped(before + 5, (signal) => boundedSearch.inTurns(problem, { steps: 22, signal }));
  expect(late).toBe(0);
  expect(answer.progress).toEqual({ ...boundedSearch.solve(problem, { steps: 20 }).progress, steps: 20 });
});
