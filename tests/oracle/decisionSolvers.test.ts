import { compileModel, beliefOf } from '@faultodds/core';
import {
  allowedActions,
  boundedSearch,
  costOfPolicy,
  exactDynamicProgramming,
  makeExpectimax,
  informationPerCost,
  makeLowerBound,
  oneStep,
  compileCaseProblem,
  repairOrder,
  compileTableProblem,
  takeAction,
  type DecisionState,
  type Solver,
} from '@faultodds/core/planning';
import { expect, test } from 'vitest';
import { createRandom } from '../bench/seeded.mjs';
import { randomModel } from './core/randomModel.ts';
import { BLOCK, boundsOfStates, boundsOfProblems, SEED, TOLERANCE, type BlockOfProblems } from './boundsOfProblems.ts';
import { randomTables, randomTablesWithOpenings } from './decisionRandomTables.mjs';
import stored from './results/boundsOfProblems.json' with { type: 'json' };

// Source of every check: the definition of an optimum, computed by walking every state a plan can reach (exact dynamic programming) on
// random small problems. Tolerance 1e-9 relative.

test('on random problems the lower bound never exceeds the optimum and the plan never undercuts it, at every stage of the search', () => {
  const found = boundsOfProblems(3);
  // 3000 problems were searched when the results were stored; the first of them say whether the results are this program's
  expect(stored.blocks.length * BLOCK).toBeGreaterThanOrEqual(3000);
  found.forEach((block, at) => {
    for (const [what, sum] of Object.entries(block))
      expect(
        Math.abs(sum / stored.blocks[at]![what as keyof BlockOfProblems] - 1),
        `block ${at}, ${what}: is it meant to differ? Then: npm run test:long`,
      ).toBeLessThan(1e-9);
  });
});

test('the bound made at the start stays below the optimum at every state that can be reached, and is above perfect information there', () => {
  const { states, higher } = boundsOfStates(40);
  expect(states).toBeGreaterThan(1500);
  expect(higher).toBeGreaterThan(states / 20);
  expect(stored.problemsWalked).toBeGreaterThanOrEqual(250);
  expect(stored.states).toBeGreaterThan(10_000);
});

test('given enough steps the search meets the optimum, and following its policy costs exactly that', () => {
  const random = createRandom(SEED + 1);
  for (let at = 0; at < 300; at += 1) {
    const problem = compileTableProblem(randomTables(random));
    const optimum = exactDynamicProgramming.solve(problem).progress.upperBound;
    const { policy, progress } = boundedSearch.solve(problem, { steps: 100_000 });
    expect(progress.certifiedGap).toBeLessThan(1e-8);
    expect(progress.upperBound).toBeCloseTo(optimum, 6);
    expect(costOfPolicy(problem, policy)).toBeCloseTo(optimum, 6);
  }
});

test('no solver is cheaper than the optimum, and each plan costs what its solver says', () => {
  const random = createRandom(SEED + 2);
  for (let at = 0; at < 300; at += 1) {
    const problem = compileTableProblem(randomTables(random));
    const exact = exactDynamicProgramming.solve(problem);
    const optimum = exact.progress.upperBound;
    expect(costOfPolicy(problem, exact.policy)).toBeCloseTo(optimum, 6);
    for (const solver of [repairOrder, informationPerCost, oneStep, makeExpectimax({ depth: 3 })] satisfies Solver[]) {
      const { policy, progress } = solver.solve(problem);
      expect(costOfPolicy(problem, policy), solver.id).toBeGreaterThan(optimum - TOLERANCE * (1 + optimum));
      expect(progress.lowerBound, solver.id).toBeLessThan(optimum + TOLERANCE * (1 + optimum));
    }
    const { progress, policy } = repairOrder.solve(problem);
    if (problem.limits.money === undefined)
      expect(costOfPolicy(problem, policy)).toBeLessThan(progress.upperBound + 1e-9);
  }
});

test('a lookahead as deep as the problem is the optimum', () => {
  const random = createRandom(SEED + 3);
  for (let at = 0; at < 200; at += 1) {
    const problem = compileTableProblem(randomTables(random));
    const depth = problem.tests.length + problem.repairs.length;
    const { progress } = makeExpectimax({ depth, width: Infinity }).solve(problem);
    const optimum = exactDynamicProgramming.solve(problem).progress.upperBound;
    // repairs with less than one chance in a hundred are left out of the lookahead
    expect(progress.upperBound / optimum).toBeLessThan(1.04);
    expect(progress.upperBound).toBeGreaterThan(optimum - 1e-9);
  }
});

test('a limit on money is kept on every way through the plan', () => {
  const random = createRandom(SEED + 4);
  for (let at = 0; at < 200; at += 1) {
    const problem = compileTableProblem({ ...randomTables(random), limits: { money: 60 } });
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

test('openings that prove needless count in every solver, above both bounds and beside the money', () => {
  const random = createRandom(SEED + 5);
  let dearer = 0;
  for (let at = 0; at < 300; at += 1) {
    const tables = randomTablesWithOpenings(random);
    const problem = compileTableProblem(tables);
    const exact = exactDynamicProgramming.solve(problem);
    const optimum = exact.progress.upperBound;
    const slack = TOLERANCE * (1 + optimum);
    expect(costOfPolicy(problem, exact.policy)).toBeCloseTo(optimum, 6);
    expect(boundedSearch.solve(problem, { steps: 100_000 }).progress.upperBound).toBeCloseTo(optimum, 6);
    for (const solver of [repairOrder, oneStep, makeExpectimax({ depth: 3 })]) {
      expect(costOfPolicy(problem, solver.solve(problem).policy), solver.id).toBeGreaterThan(optimum - slack);
    }
    const { progress, policy } = repairOrder.solve(problem);
    const limited = problem.limits.money !== undefined;
    if (!limited) expect(costOfPolicy(problem, policy)).toBeLessThan(progress.upperBound + 1e-9);
    const bound = makeLowerBound(problem);
    expect(bound(problem.start)).toBeLessThan(optimum + slack);
    // the same problem where nothing counts is never dearer; following this policy there costs what is left of it without the openings
    const { needlessOpening: _, ...free } = tables;
    const freely = compileTableProblem(free);
    const money = costOfPolicy(freely, exact.policy);
    expect(exactDynamicProgramming.solve(freely).progress.upperBound).toBeLessThan(money + slack);
    expect(money).toBeLessThan(optimum + slack);
    if (money < optimum - slack) dearer += 1;
  }
  expect(dearer).toBeGreaterThan(20);
});

test('with tests that depend on each other through mechanisms the bound holds at every reachable state too', () => {
  let states = 0;
  for (let seed = 1; seed <= 20; seed += 1) {
    const model = randomModel(seed);
    const compiled = compileModel(model);
    const { tests } = compileCaseProblem(compiled, beliefOf(compiled, { context: {}, observations: [] }));
    // few enough tests and repairs to walk everything
    const kept = new Set(tests.slice(0, 3).map(({ id }) => id));
    const small = compileModel({
      ...model,
      tests: model.tests.filter(({ id }) => kept.has(id)),
      repairs: model.repairs.filter(({ referral }, at) => referral === true || at < 3),
    });
    const problem = compileCaseProblem(small, beliefOf(small, { context: {}, observations: [] }));
    const exact = exactDynamicProgramming.solve(problem);
    const bound = makeLowerBound(problem);
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
    states += seen.size;
    const searched = boundedSearch.solve(problem, { steps: 100_000 }).progress;
    expect(searched.upperBound).toBeCloseTo(exact.progress.upperBound, 6);
  }
  expect(states).toBeGreaterThan(500);
});
