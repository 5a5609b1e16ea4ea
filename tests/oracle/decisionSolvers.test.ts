import {
  allowedActions,
  boundedSearch,
  compileModel,
  costOfPolicy,
  exactDynamicProgramming,
  expectimax,
  informationPerCost,
  lowerBoundOf,
  oneStep,
  problemOfCase,
  repairOrder,
  tableProblem,
  takeAction,
  updateBelief,
  type DecisionState,
  type Solver,
} from '@faultodds/core';
import { expect, test } from 'vitest';
import { seededRandom } from '../bench/seeded.mjs';
import { randomModel } from './core/randomModel.ts';
import { randomTables } from './decisionRandomTables.mjs';

// Source of every check: the definition of an optimum, computed by walking every place a plan can reach (exact dynamic programming) on
// random small problems. Tolerance 1e-9 relative.
const SEED = 20261125;
const TOLERANCE = 1e-9;
// Thousands of problems, each solved to the end: allowed for on a busy machine.
const PATIENCE = { timeout: 180_000 };

test(
  'on 3000 random problems the lower bound never exceeds the optimum and the plan never undercuts it, at every stage of the search',
  PATIENCE,
  () => {
    const random = seededRandom(SEED);
    for (let at = 0; at < 3000; at += 1) {
      const tables = randomTables(random);
      const problem = tableProblem(tables);
      const optimum = exactDynamicProgramming.solve(problem).progress.upperBound;
      const slack = TOLERANCE * (1 + optimum);
      const check = (lower: number, upper: number): void => {
        if (lower > optimum + slack || upper < optimum - slack) {
          throw new Error(
            `problem ${at} of seed ${SEED}: ${lower} <= ${optimum} <= ${upper} is false: ${JSON.stringify(tables)}`,
          );
        }
      };
      const { progress } = boundedSearch.solve(problem, {
        steps: at % 40,
        onImprove: ({ lowerBound, upperBound }) => check(lowerBound, upperBound),
      });
      check(progress.lowerBound, progress.upperBound);
    }
  },
);

test(
  'the bound made at the start stays below the optimum at every place that can be reached, and is above perfect information there',
  PATIENCE,
  () => {
    const random = seededRandom(SEED + 5);
    let places = 0;
    let higher = 0;
    for (let at = 0; at < 250; at += 1) {
      const tables = randomTables(random);
      const problem = tableProblem(tables);
      const exact = exactDynamicProgramming.solve(problem);
      const bound = lowerBoundOf(problem);
      const seen = new Set<string>();
      const walk = (state: DecisionState): void => {
        if (seen.has(state.key)) return;
        seen.add(state.key);
        places += 1;
        const optimum = costOfPolicy(problem, exact.policy, { from: state });
        const lower = bound(state);
        if (lower > optimum + TOLERANCE * (1 + optimum)) {
          throw new Error(
            `problem ${at} of seed ${SEED + 5} at ${state.key}: ${lower} <= ${optimum} is false: ${JSON.stringify(tables)}`,
          );
        }
        const perfect = repairOrder.solve({ ...problem, start: state }).progress.lowerBound;
        expect(lower).toBeGreaterThan(perfect - TOLERANCE * (1 + perfect));
        if (lower > perfect * 1.001) higher += 1;
        for (const action of allowedActions(problem, state)) {
          for (const { state: then } of takeAction(problem, state, action).branches) if (then !== undefined) walk(then);
        }
      };
      walk(problem.start);
    }
    expect(places).toBeGreaterThan(10_000);
    expect(higher).toBeGreaterThan(places / 20);
  },
);

test('given enough steps the search meets the optimum, and following its policy costs exactly that', PATIENCE, () => {
  const random = seededRandom(SEED + 1);
  for (let at = 0; at < 300; at += 1) {
    const problem = tableProblem(randomTables(random));
    const optimum = exactDynamicProgramming.solve(problem).progress.upperBound;
    const { policy, progress } = boundedSearch.solve(problem, { steps: 100_000 });
    expect(progress.certifiedGap).toBeLessThan(1e-8);
    expect(progress.upperBound).toBeCloseTo(optimum, 6);
    expect(costOfPolicy(problem, policy)).toBeCloseTo(optimum, 6);
  }
});

test('no solver is cheaper than the optimum, and each plan costs what its solver says', PATIENCE, () => {
  const random = seededRandom(SEED + 2);
  for (let at = 0; at < 300; at += 1) {
    const problem = tableProblem(randomTables(random));
    const exact = exactDynamicProgramming.solve(problem);
    const optimum = exact.progress.upperBound;
    expect(costOfPolicy(problem, exact.policy)).toBeCloseTo(optimum, 6);
    for (const solver of [repairOrder, informationPerCost, oneStep, expectimax({ depth: 3 })] satisfies Solver[]) {
      const { policy, progress } = solver.solve(problem);
      expect(costOfPolicy(problem, policy), solver.id).toBeGreaterThan(optimum - TOLERANCE * (1 + optimum));
      expect(progress.lowerBound, solver.id).toBeLessThan(optimum + TOLERANCE * (1 + optimum));
    }
    const { progress, policy } = repairOrder.solve(problem);
    if (problem.limits.money === undefined)
      expect(costOfPolicy(problem, policy)).toBeLessThan(progress.upperBound + 1e-9);
  }
});

test('a lookahead as deep as the problem is the optimum', PATIENCE, () => {
  const random = seededRandom(SEED + 3);
  for (let at = 0; at < 200; at += 1) {
    const problem = tableProblem(randomTables(random));
    const depth = problem.tests.length + problem.repairs.length;
    const { progress } = expectimax({ depth, width: Infinity }).solve(problem);
    const optimum = exactDynamicProgramming.solve(problem).progress.upperBound;
    // repairs with less than one chance in a hundred are left out of the lookahead
    expect(progress.upperBound / optimum).toBeLessThan(1.02);
    expect(progress.upperBound).toBeGreaterThan(optimum - 1e-9);
  }
});

test('a limit on money is kept on every way through the plan', PATIENCE, () => {
  const random = seededRandom(SEED + 4);
  for (let at = 0; at < 200; at += 1) {
    const problem = tableProblem({ ...randomTables(random), limits: { money: 60 } });
    for (const solver of [exactDynamicProgramming, boundedSearch, oneStep, repairOrder]) {
      const { policy } = solver.solve(problem);
      costOfPolicy(problem, (state) => {
        expect(state.spent.money).toBeLessThanOrEqual(60 + 1e-9);
        const action = policy(state);
        expect(allowedActions(problem, state)).toContainEqual(action);
        return action;
      });
    }
  }
});

test(
  'with tests that depend on each other through mechanisms the bound holds at every reachable place too',
  PATIENCE,
  () => {
    let places = 0;
    for (let seed = 1; seed <= 20; seed += 1) {
      const model = randomModel(seed);
      const compiled = compileModel(model);
      const { tests } = problemOfCase(compiled, updateBelief(compiled, { context: {}, observations: [] }));
      // few enough tests and repairs to walk everything
      const kept = new Set(tests.slice(0, 3).map(({ id }) => id));
      const small = compileModel({
        ...model,
        tests: model.tests.filter(({ id }) => kept.has(id)),
        repairs: model.repairs.filter(({ referral }, at) => referral === true || at < 3),
      });
      const problem = problemOfCase(small, updateBelief(small, { context: {}, observations: [] }));
      const exact = exactDynamicProgramming.solve(problem);
      const bound = lowerBoundOf(problem);
      const seen = new Set<string>();
      const walk = (state: DecisionState): void => {
        if (seen.has(state.key)) return;
        seen.add(state.key);
        const optimum = costOfPolicy(problem, exact.policy, { from: state });
        expect(bound(state), `model ${seed} at ${state.key}`).toBeLessThan(optimum + TOLERANCE * (1 + optimum));
        for (const action of allowedActions(problem, state)) {
          for (const { state: then } of takeAction(problem, state, action).branches) if (then !== undefined) walk(then);
        }
      };
      walk(problem.start);
      places += seen.size;
      const searched = boundedSearch.solve(problem, { steps: 100_000 }).progress;
      expect(searched.upperBound).toBeCloseTo(exact.progress.upperBound, 6);
    }
    expect(places).toBeGreaterThan(500);
  },
);
