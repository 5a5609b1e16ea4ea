import {
  boundedSearch,
  costOfPolicy,
  exactDynamicProgramming,
  makeExpectimax,
  informationPerCost,
  oneStep,
  repairOrder,
  compileTableProblem,
  takeAction,
  type Action,
  type DecisionProblem,
  type ProblemTables,
} from '@faultodds/core/planning';
import { expect, test } from 'vitest';

// Tolerance 1e-9 throughout: every figure was found by enumerating all orders.
const FIVE = { p: [0.3, 0.25, 0.2, 0.15, 0.1], cost: [6, 2, 5, 1, 4] };

function perfectRepairs(p: readonly number[], cost: readonly number[], handOver: number): DecisionProblem {
  return compileTableProblem({
    prior: p,
    tests: [],
    repairs: cost.map((one, at) => ({ id: `a${at + 1}`, cost: one, cures: p.map((_, c) => Number(c === at)) })),
    referralCost: p.map(() => handOver),
  });
}

function sequence(problem: DecisionProblem, policy: (state: DecisionProblem['start']) => Action): string[] {
  const ids: string[] = [];
  let state: DecisionProblem['start'] | undefined = problem.start;
  while (state !== undefined) {
    const action = policy(state);
    ids.push(action.kind === 'repair' ? problem.repairs[action.repair]!.id : action.kind);
    state = takeAction(problem, state, action).branches.find(({ state: then }) => then !== undefined)?.state;
  }
  return ids;
}

// Kalagnanam & Henrion 1988, UAI 4:271-281; Kadane & Simon 1977, Annals of Statistics 5(2):237-255. Instance constructed. Check C2.
test('probability over cost is the optimal order of perfect repairs: 4, 2, 1, 3, 5 at 8.2 (C2)', () => {
  const problem = perfectRepairs(FIVE.p, FIVE.cost, 1e6);
  for (const solver of [repairOrder, exactDynamicProgramming, boundedSearch]) {
    const { policy, progress } = solver.solve(problem);
    expect(progress.upperBound, solver.id).toBeCloseTo(8.2, 9);
    expect(sequence(problem, policy), solver.id).toEqual(['a4', 'a2', 'a1', 'a3', 'a5']);
  }
});

// The service call of Heckerman, Breese & Rommelse 1995, CACM 38(3):49-57. Instance constructed. Check C4.
test.each([
  { handOver: 5, order: ['refer'], cost: 5 },
  { handOver: 7, order: ['a4', 'a2', 'refer'], cost: 6.9 },
  { handOver: 8, order: ['a4', 'a2', 'refer'], cost: 7.5 },
  { handOver: 10, order: ['a4', 'a2', 'a1', 'a3', 'a5'], cost: 8.2 },
  { handOver: 15, order: ['a4', 'a2', 'a1', 'a3', 'a5'], cost: 8.2 },
])('with a hand-over at $handOver the best plan costs $cost (C4)', ({ handOver, order, cost }) => {
  const problem = perfectRepairs(FIVE.p, FIVE.cost, handOver);
  for (const solver of [repairOrder, exactDynamicProgramming]) {
    const { policy, progress } = solver.solve(problem);
    expect(progress.upperBound, solver.id).toBeCloseTo(cost, 9);
    expect(sequence(problem, policy), solver.id).toEqual(order);
  }
});

// Langseth & Jensen 2003, Reliability Engineering & System Safety 80(1):49-62 (repairs that cure several causes). Constructed. Check C5.
test('where repairs overlap, greedy p/C costs 1.5 and the optimum is 1.45 (C5)', () => {
  const problem = compileTableProblem({
    prior: [0.2, 0.25, 0.4, 0.15],
    tests: [],
    repairs: [
      { id: 'a1', cost: 1, cures: [1, 1, 0, 0] },
      { id: 'a2', cost: 1, cures: [0, 0, 1, 1] },
      { id: 'a3', cost: 1, cures: [0, 1, 1, 0] },
    ],
    referralCost: [1e6, 1e6, 1e6, 1e6],
  });
  expect(repairOrder.solve(problem).progress.upperBound).toBeCloseTo(1.5, 9);
  for (const solver of [exactDynamicProgramming, boundedSearch, makeExpectimax({ depth: 2 })]) {
    const { policy, progress } = solver.solve(problem);
    expect(progress.upperBound, solver.id).toBeCloseTo(1.45, 9);
    expect(sequence(problem, policy).slice(0, 2), solver.id).toEqual(['a2', 'a1']);
  }
});

// Ottosen & Jensen 2010, UAI 26 (arXiv 1203.3502). Instance constructed. Check C6: the compartment is closed before every check, as ours
// is. Not covered here: their other case, checks without closing, which this problem does not offer for repairs.
test('a compartment that is closed before every check: a, c, b, d at 11.35 (C6)', () => {
  const cures = (at: number): number[] => [0, 1, 2, 3].map((c) => Number(c === at));
  const problem = compileTableProblem({
    prior: [0.3, 0.1, 0.35, 0.25],
    access: [{ cost: 4 + 2 }],
    tests: [],
    repairs: [
      { id: 'a', cost: 3, cures: cures(0) },
      { id: 'b', cost: 2, cures: cures(1) },
      { id: 'c', cost: 1, access: 0, cures: cures(2) },
      { id: 'd', cost: 5, access: 0, cures: cures(3) },
    ],
    referralCost: [1e6, 1e6, 1e6, 1e6],
  });
  const { policy, progress } = exactDynamicProgramming.solve(problem);
  expect(progress.upperBound).toBeCloseTo(11.35, 9);
  expect(sequence(problem, policy)[0]).toBe('a');
});

// Constructed, solved by exact expectimax. Check C11. One decision only: the bay is open now and too dear to open again.
test('two noisy tests: deciding now costs 30, the best plan 16.75, and it begins with T1 (C11)', () => {
  const tables = {
    prior: [0.5, 0.3, 0.2],
    access: [{ cost: 1e5 }],
    open: [0],
    tests: [
      { id: 'T1', cost: 4, outcomeGivenCause: [0.9, 0.2, 0.2].map((p) => [p, 1 - p]) },
      { id: 'T2', cost: 3, outcomeGivenCause: [0.5, 0.9, 0.1].map((p) => [p, 1 - p]) },
    ],
    repairs: [0, 1, 2].map((at) => ({
      id: `decide-${at + 1}`,
      cost: 0,
      access: 0,
      cures: [0, 1, 2].map((c) => Number(c === at)),
    })),
    referralCost: [60, 60, 60],
  } satisfies ProblemTables;
  const problem = compileTableProblem(tables);
  expect(repairOrder.solve(problem).progress.upperBound).toBeCloseTo(30, 9);
  expect(oneStep.solve(problem).progress.upperBound).toBeCloseTo(22.6, 9);
  for (const solver of [exactDynamicProgramming, boundedSearch, makeExpectimax({ depth: 3 })]) {
    const { policy, progress } = solver.solve(problem);
    expect(progress.upperBound, solver.id).toBeCloseTo(16.75, 9);
    expect(progress.best, solver.id).toEqual({ kind: 'test', test: 0 });
    expect(costOfPolicy(problem, policy), solver.id).toBeCloseTo(16.75, 9);
  }
  const onlyT2 = compileTableProblem({ ...tables, tests: [tables.tests[1]!] });
  // T2 alone is worth 1.2 and costs 3: nobody buys it
  expect(exactDynamicProgramming.solve(onlyT2).progress.upperBound).toBeCloseTo(30, 9);
});

// Vomlelova & Vomlel 2003, Soft Computing 7:357-368; costs and the question as seen in Vomlel's lecture (2007), P(A1), P(A3) and the
// hand-over price completed; solved by exact dynamic programming. Check C12; not the optimum printed by the authors.
test('light print: A3 first at 14.04; the question that splits the causes is not worth 2, but worth 1 (C12)', () => {
  const withQuestionAt = (price: number): DecisionProblem =>
    compileTableProblem({
      prior: [0.4, 0.3, 0.2, 0.1],
      tests: [{ id: 'Q1', cost: price, outcomeGivenCause: [1, 1, 0, 0].map((p) => [p, 1 - p]) }],
      repairs: [
        { id: 'A1', cost: 5, cures: [0.9, 0, 0, 0] },
        { id: 'A2', cost: 15, cures: [0.9, 0.9, 0, 0] },
        { id: 'A3', cost: 1, cures: [0, 0, 0.9, 0.9] },
      ],
      referralCost: [60, 60, 60, 60],
    });
  const problem = withQuestionAt(2);
  const { policy, progress } = exactDynamicProgramming.solve(problem);
  expect(progress.upperBound).toBeCloseTo(14.04, 9);
  expect(progress.best).toEqual({ kind: 'repair', repair: 2 });
  const first = (action: Action): number => {
    const { cost, branches } = takeAction(problem, problem.start, action);
    return branches.reduce(
      (sum, { probability, state }) =>
        state === undefined ? sum : sum + probability * costOfPolicy(problem, policy, { from: state }),
      cost.money,
    );
  };
  expect(first({ kind: 'refer' })).toBeCloseTo(60, 9);
  expect(first({ kind: 'repair', repair: 0 })).toBeCloseTo(15.03, 9);
  expect(first({ kind: 'repair', repair: 1 })).toBeCloseTo(19.71, 9);
  expect(first({ kind: 'test', test: 0 })).toBeCloseTo(14.74, 9);
  const afterA3 = takeAction(problem, problem.start, { kind: 'repair', repair: 2 }).branches[1]!.state!;
  expect(costOfPolicy(problem, policy, { from: afterA3 })).toBeCloseTo(17.8630137, 7);
  const [yes, no] = takeAction(problem, problem.start, { kind: 'test', test: 0 }).branches;
  expect(costOfPolicy(problem, policy, { from: yes!.state! })).toBeCloseTo(15.2, 9);
  expect(costOfPolicy(problem, policy, { from: no!.state! })).toBeCloseTo(7, 9);

  const cheap = exactDynamicProgramming.solve(withQuestionAt(1)).progress;
  expect(cheap.upperBound).toBeCloseTo(13.74, 9);
  expect(cheap.best).toEqual({ kind: 'test', test: 0 });
  expect(boundedSearch.solve(problem).progress.upperBound).toBeCloseTo(14.04, 9);
});

// de Kleer & Williams 1987, Artificial Intelligence 32(1):97-130: circuit of multipliers and adders; four minimal candidates, recomputed.
// Check C10: measuring X tells 0.99993 bits, Y 0.0808, Z 0.0454.
test('the measurement that tells most comes first: X (C10)', () => {
  const shows = (...seen: readonly number[]): number[][] => seen.map((one) => [one, 1 - one]);
  const problem = compileTableProblem({
    prior: [0.495, 0.495, 0.005, 0.005],
    tests: [
      { id: 'X', cost: 1, outcomeGivenCause: shows(1, 0, 0, 0) },
      { id: 'Y', cost: 1, outcomeGivenCause: shows(0, 0, 1, 1) },
      { id: 'Z', cost: 1, outcomeGivenCause: shows(0, 0, 1, 0) },
    ],
    repairs: [0, 1, 2, 3].map((at) => ({
      id: `renew-${at + 1}`,
      cost: 10,
      cures: [0, 1, 2, 3].map((c) => Number(c === at)),
    })),
    referralCost: [100, 100, 100, 100],
  });
  expect(informationPerCost.solve(problem).progress.best).toEqual({ kind: 'test', test: 0 });
});
