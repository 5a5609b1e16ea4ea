import { formatMoney } from '../../words/en/formatMoney.ts';
import { formatProbability } from '../../words/en/formatProbability.ts';
import type { Plan, PlanStep } from './plan.ts';
import type { PlanLabels } from './planLabels.ts';

/** A plan as indented text, two blanks a level: each step with its price, each outcome with its probability and what is done then. */
export function planAsText(plan: Plan, labels: PlanLabels): string {
  const { expected, median, ninetiethPercentile, worst } = plan.cost;
  const gap =
    plan.certifiedGap > 0 ? `, at most ${formatProbability(plan.certifiedGap)} of it above the best possible plan` : '';
  return [
    `Expected cost ${formatMoney(expected)}${gap}`,
    `Half of the time up to ${formatMoney(median)}, 9 times in 10 up to ${formatMoney(ninetiethPercentile)}, at worst ${formatMoney(worst)}`,
    ...stepLines(plan.root, labels, 0),
    '',
  ].join('\n');
}

function stepLines(step: PlanStep, labels: PlanLabels, level: number): string[] {
  const indent = '  '.repeat(level);
  const head = `${indent}${labels.step(step)} (${formatMoney(step.price)})`;
  if (step.kind === 'refer') return [head];
  const branches = step.branches.flatMap((branch) => {
    const outcome = `${indent}  ${labels.outcome(step, branch.outcome)}, ${formatProbability(branch.probability)}`;
    return branch.then === undefined
      ? [branch.outcome === 'cured' || step.folded === 0 ? outcome : `${outcome} …`]
      : [`${outcome}:`, ...stepLines(branch.then, labels, level + 2)];
  });
  return [
    head,
    ...branches,
    ...(step.folded > 0 ? [`${indent}  … ${step.folded} more ${step.folded === 1 ? 'step' : 'steps'}`] : []),
  ];
}
