import { describe, expect, test } from 'vitest';
import { costOfPolicy } from '../solvers/costOfPolicy.ts';
import { writePlan } from './writePlan.ts';
import type { PlanStep } from './plan.ts';
import { planAsMermaid } from './planAsMermaid.ts';
import { planAsSvg } from './planAsSvg.ts';
import { planAsText } from './planAsText.ts';
import { planLabels } from './planLabels.ts';
import { english } from '../words/languages/english.ts';
import { improvingSolutions } from '../solvers/boundedSearch.ts';
import { exactDynamicProgramming } from '../solvers/exactDynamicProgramming.ts';
import { compileTableProblem } from '../problem/compileTableProblem.ts';

// Worked by hand: a test for 10 that never errs tells a cheap cause (3 in 4) from a dear one; handing on costs 1000.
const problem = compileTableProblem({
  prior: [0.75, 0.25],
  tests: [
    {
      id: 'look',
      cost: 10,
      outcomeGivenCause: [
        [1, 0],
        [0, 1],
      ],
    },
  ],
  repairs: [
    { id: 'cheap', cost: 100, cures: [1, 0] },
    { id: 'dear', cost: 400, cures: [0, 0.9] },
  ],
  referralCost: [1000, 1000],
});
const solution = exactDynamicProgramming.solve(problem);
const plan = writePlan(problem, solution);

function stepsOf(step: PlanStep): PlanStep[] {
  return [step, ...step.branches.flatMap(({ then }) => (then === undefined ? [] : stepsOf(then)))];
}

describe('a plan', () => {
  test('costs what its branches cost: 10 + 3/4 x 100 + 1/4 x (400 + 1/10 x 1000)', () => {
    expect(plan.cost.expected.amount).toBeCloseTo(10 + 0.75 * 100 + 0.25 * (400 + 0.1 * 1000), 9);
    expect(plan.cost.expected.amount).toBeCloseTo(costOfPolicy(problem, solution.policy), 9);
  });

  test('has the median of its commonest way, nine in ten of the next, and the worst of all', () => {
    expect(plan.cost.median.amount).toBeCloseTo(110, 9);
    expect(plan.cost.ninetiethPercentile.amount).toBeCloseTo(410, 9);
    expect(plan.cost.worst.amount).toBeCloseTo(1410, 9);
  });

  test('reaches every step with the product of the probabilities before it', () => {
    expect(stepsOf(plan.root).map(({ id, reached }) => [id, reached])).toEqual([
      ['look', 1],
      ['cheap', 0.75],
      ['dear', 0.25],
      ['refer', expect.closeTo(0.025, 12)],
    ]);
  });

  test('is folded below the depth asked for, and counts what it folds', () => {
    const short = writePlan(problem, solution, { depth: 1 });
    expect(short.root.branches.every(({ then }) => then === undefined)).toBe(true);
    expect(short.root.folded).toBe(3);
    expect(short.cost).toEqual(plan.cost);
  });

  test('survives JSON unchanged', () => {
    expect(JSON.parse(JSON.stringify(plan))).toEqual(plan);
  });

  test('hands on what is too rare to plan, and says what that costs', () => {
    const rough = writePlan(problem, solution, { leastProbability: 0.3 });
    expect(rough.cost.expected.amount).toBeCloseTo(10 + 0.75 * 100 + 0.25 * 1000, 9);
  });
});

test('a growing plan gets no worse, and ends where the search ends', () => {
  const seen = [...improvingSolutions(problem)].map(({ progress }) => progress);
  expect(seen.length).toBeGreaterThan(1);
  seen.forEach(({ upperBound, lowerBound }, at) => {
    if (at === 0) return;
    expect(upperBound).toBeLessThanOrEqual(seen[at - 1]!.upperBound);
    expect(lowerBound).toBeGreaterThanOrEqual(seen[at - 1]!.lowerBound);
  });
  expect(seen.at(-1)!.upperBound).toBeCloseTo(plan.cost.expected.amount, 9);
});

describe('a plan drawn', () => {
  const labels = planLabels(
    {
      tests: [
        {
          id: 'look',
          label: 'Look & <see>',
          outcomes: [
            { id: 'outcome-1', label: 'says "fine"' },
            { id: 'outcome-2', label: 'broken' },
          ],
        },
      ] as unknown as Parameters<typeof planLabels>[0]['tests'],
      repairs: [],
      cautions: [],
    },
    english,
  );

  test('as text: prices, probabilities and what is done then, indented', () => {
    const lines = planAsText(plan, labels, english).split('\n');
    expect(lines[0]).toBe('Expected cost 210 units');
    expect(lines).toContain('Look & <see> (10 units)');
    expect(lines).toContain('  broken, 25%:');
    expect(lines).toContain('    dear (400 units)');
    expect(lines).toContain('      the fault remains, 10%:');
    expect(lines).toContain('        refer (1,000 units)');
  });

  test('as Mermaid: a box per step, and no label ends its box', () => {
    const mermaid = planAsMermaid(plan, labels, english);
    expect(mermaid.startsWith('flowchart LR\n')).toBe(true);
    expect(mermaid).toContain('s0["Look #38; #60;see#62;<br/>10 units"]');
    expect(mermaid).toContain('s0 -->|"says #34;fine#34;, 75%"| s1');
    expect(mermaid.match(/s\d+\["/g)).toHaveLength(4);
  });

  test('as SVG: well formed, labelled, every step once', () => {
    const svg = planAsSvg(plan, labels, english, 'What next & why');
    expect(svg).toContain('role="img"');
    expect(svg).toContain('<title>What next &#38; why</title>');
    expect(svg.match(/<circle /g)).toHaveLength(4);
    expect(svg).not.toContain('<see>');
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });

  // https://www.w3.org/TR/xml/#charsets: no Char, hence no well-formed document, neither raw nor escaped
  test('as SVG: what XML forbids is left out, wherever a name comes from', () => {
    const forbidden = '\u0000\u0008\u000b\u001b\u001f\ud83d\ufffe\udc00\uffff';
    const poisoned: typeof labels = {
      ...labels,
      step: () => `${forbidden}\tname 🔧`,
      outcome: () => `${'o'.repeat(22)}🔧${forbidden}`, // cut in the middle of a pair
    };
    const svg = planAsSvg(plan, poisoned, english, `ti${forbidden}tle`);
    expect(svg).toContain('<title>title</title>');
    expect(svg).toContain('\tname 🔧');
    // eslint-disable-next-line no-control-regex
    expect(svg).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Cs}/u);
  });
});
