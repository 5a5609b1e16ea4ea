import { expect, test } from 'vitest';
import { compileTableProblem } from '../problem/compileTableProblem.ts';
import { boundedSearch } from '../solvers/boundedSearch.ts';
import { exactDynamicProgramming } from '../solvers/exactDynamicProgramming.ts';
import { planLabels } from './planLabels.ts';
import { planAsMermaid } from './planAsMermaid.ts';
import { planAsSvg } from './planAsSvg.ts';
import { planAsText } from './planAsText.ts';
import type { PlanStep } from './plan.ts';
import { writePlan, type WritePlanOptions } from './writePlan.ts';
import { english } from '../words/languages/english.ts';
import { german } from '../words/languages/de/german.ts';

// Three dear repairs, one of them right; a look tells the first from the others for 20, a second one these two apart for 10.
const problem = compileTableProblem({
  prior: [0.4, 0.35, 0.25],
  tests: [
    {
      id: 'look',
      cost: 20,
      outcomeGivenCause: [
        [0.95, 0.05],
        [0.05, 0.95],
        [0.05, 0.95],
      ],
    },
    {
      id: 'second-look',
      cost: 10,
      outcomeGivenCause: [
        [0.5, 0.5],
        [0.98, 0.02],
        [0.02, 0.98],
      ],
    },
  ],
  repairs: [
    { id: 'first', cost: 300, cures: [1, 0, 0] },
    { id: 'second', cost: 400, cures: [0, 1, 0] },
    { id: 'third', cost: 400, cures: [0, 0, 1] },
  ],
  referralCost: [2000, 2000, 2000],
});
// one situation examined: what follows the first test is the order of repairs
const hasty = boundedSearch.solve(problem, { steps: 1 });
const stepsOf = (step: PlanStep): PlanStep[] => [
  step,
  ...step.branches.flatMap(({ then }) => (then === undefined ? [] : stepsOf(then))),
];
const written = (options: WritePlanOptions): ReturnType<typeof writePlan> => writePlan(problem, hasty, options);
const blind = written({ leastLooked: 1 });
const looked = written({});

test('what the search has not examined is looked at before it is written, and the plan costs less for it', () => {
  expect(stepsOf(blind.root).filter(({ kind }) => kind === 'test')).toHaveLength(1);
  expect(stepsOf(looked.root).filter(({ kind }) => kind === 'test').length).toBeGreaterThan(1);
  expect(looked.cost.expected.amount).toBeLessThan(blind.cost.expected.amount - 10);
  expect(looked.cost.expected.amount).toBeLessThan(hasty.progress.upperBound);
});

test('what nobody has looked into is marked, at whatever depth, and nothing else', () => {
  expect(blind.root.examined).toBeUndefined();
  expect(blind.root.branches.map(({ then }) => then?.examined)).toEqual([false, false]);
  expect(stepsOf(looked.root).filter(({ examined, reached }) => examined === false && reached >= 0.01)).toEqual([]);
  expect(JSON.parse(JSON.stringify(blind))).toEqual(blind);
});

test('what is too rare to plan is marked as well', () => {
  const rough = writePlan(problem, exactDynamicProgramming.solve(problem), { leastProbability: 0.1 });
  const refers = stepsOf(rough.root).filter(({ kind }) => kind === 'refer');
  expect(refers.length).toBeGreaterThan(0);
  for (const { examined } of refers) expect(examined).toBe(false);
});

test('a solver that plans everything leaves nothing to look at', () => {
  const exact = writePlan(problem, exactDynamicProgramming.solve(problem), { leastProbability: 0 });
  expect(stepsOf(exact.root).every(({ examined }) => examined === undefined)).toBe(true);
});

test.each([
  [english, 'not looked into yet'],
  [german, 'noch nicht näher betrachtet'],
])('text, chart and drawing say so', (language, words) => {
  const labels = planLabels({ tests: [], repairs: [], cautions: [] }, language);
  const marked = stepsOf(blind.root).filter(({ examined }) => examined === false).length;
  const count = (text: string): number => text.split(words).length - 1;
  expect(marked).toBeGreaterThan(1);
  expect(count(planAsText(blind, labels, language))).toBe(marked);
  expect(count(planAsMermaid(blind, labels, language))).toBe(marked);
  expect(count(planAsSvg(blind, labels, language))).toBe(marked);
});
