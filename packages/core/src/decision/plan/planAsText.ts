import type { Plan, PlanStep } from './plan.ts';
import type { PlanLabels } from './planLabels.ts';
import { englishPlan, type PlanLanguage } from './planLanguage.ts';

/** A plan as indented text, two blanks a level: each step with its price, each outcome with its probability and what is done then. */
export function planAsText(plan: Plan, labels: PlanLabels, language: PlanLanguage = englishPlan): string {
  const { planWords, formatMoney, formatProbability } = language;
  const { expected, median, ninetiethPercentile, worst } = plan.cost;
  const cost = formatMoney(expected);
  return [
    plan.certifiedGap > 0
      ? planWords.expectedWithGap({ cost, gap: formatProbability(plan.certifiedGap) })
      : planWords.expected({ cost }),
    planWords.spread({
      median: formatMoney(median),
      ninetieth: formatMoney(ninetiethPercentile),
      worst: formatMoney(worst),
    }),
    ...stepLines(plan.root, labels, 0, language),
    '',
  ].join('\n');
}

function stepLines(step: PlanStep, labels: PlanLabels, level: number, language: PlanLanguage): string[] {
  const { planWords, formatMoney, formatProbability } = language;
  const indent = '  '.repeat(level);
  const head = `${indent}${labels.step(step)} (${formatMoney(step.price)})`;
  if (step.kind === 'refer') return [head];
  const branches = step.branches.flatMap((branch) => {
    const outcome = `${indent}  ${labels.outcome(step, branch.outcome)}, ${formatProbability(branch.probability)}`;
    return branch.then === undefined
      ? [branch.outcome === 'cured' || step.folded === 0 ? outcome : `${outcome} …`]
      : [`${outcome}:`, ...stepLines(branch.then, labels, level + 2, language)];
  });
  return [head, ...branches, ...(step.folded > 0 ? [`${indent}  ${planWords.folded(step.folded)}`] : [])];
}
