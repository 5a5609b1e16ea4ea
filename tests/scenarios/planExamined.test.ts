// A worked case in which a short search stopped above what was written out: a repair that hardly helps stood there as what to do.
import { beliefOf, caseState, circumstancesOf, compileModel, factsOf, loadCase, parseModel } from '@faultodds/core';
import { boundedSearch, compileCaseProblem, writePlan, type PlanStep } from '@faultodds/core/planning';
import { demoCases, misfire } from '@faultodds/misfire';
import { expect, test } from 'vitest';

const compiled = compileModel(parseModel(misfire));
const stepsOf = (step: PlanStep): PlanStep[] => [
  step,
  ...step.branches.flatMap(({ then }) => (then === undefined ? [] : stepsOf(then))),
];
const chanceOf = ({ branches }: PlanStep): number =>
  branches.find(({ outcome }) => outcome === 'cured')?.probability ?? 0;

test('demo-08 after two results: no repair that helps in less than a quarter of the cases is advised where a test is cheaper', () => {
  const document = (demoCases as { id: string; events: { kind: string }[] }[]).find(({ id }) => id === 'demo-08')!;
  const third = document.events.flatMap(({ kind }, at) => (kind === 'result-recorded' ? [at] : []))[2];
  const state = caseState(loadCase(compiled, { ...document, events: document.events.slice(0, third) }));
  const problem = compileCaseProblem(compiled, beliefOf(compiled, factsOf(state)), circumstancesOf(compiled, state));
  const found = boundedSearch.solve(problem, { steps: 12 });
  const weak = (root: PlanStep): PlanStep[] =>
    stepsOf(root).filter(
      (step) => step.kind === 'repair' && step.reached >= 0.01 && step.examined !== false && chanceOf(step) < 0.25,
    );
  // as the search left it, without a look of the one who writes
  const { groundsAt: _, ...asFound } = found;
  const [before, now] = [writePlan(problem, asFound), writePlan(problem, found)];
  expect(weak(before.root).length).toBeGreaterThan(0);
  expect(weak(now.root)).toEqual([]);
  expect(now.cost.expected.amount).toBeLessThan(before.cost.expected.amount);
});
