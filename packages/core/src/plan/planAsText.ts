import { cautionsOfPlan } from './cautionsOfPlan.ts';
import { hazardMark } from './hazardMark.ts';
import { planLegend } from './planLegend.ts';
import type { Plan, PlanStep } from './plan.ts';
import type { PlanLabels } from './planLabels.ts';
import type { PlanLanguage } from './planLanguage.ts';

/** A plan as indented text, two blanks a level: each step with its price and the numbers of its cautions, each outcome with its probability
 * and what is done then; below, every caution in full.
 * @example
 * ```ts
 * const lines = planAsText(plan, planLabels(model, english), english).split('\n');
 * lines[0] // 'Expected cost 108 units'
 * lines.slice(2, 5) // ['tell (20 units)', '  outcome-1, 60%:', '    first (100 units)']
 * ``` */
export function planAsText(plan: Plan, labels: PlanLabels, language: PlanLanguage): string {
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
    ...stepLines(plan.root, 0, { labels, language, cautions: cautionsOfPlan(plan.root) }),
    '',
    ...planLegend(plan, labels, language),
    '',
  ].join('\n');
}

interface Writing {
  readonly labels: PlanLabels;
  readonly language: PlanLanguage;
  /** Of the whole plan, by number. */
  readonly cautions: readonly string[];
}

function stepLines(step: PlanStep, level: number, writing: Writing): string[] {
  const { labels, language, cautions } = writing;
  const { planWords, formatMoney, formatProbability } = language;
  const indent = '  '.repeat(level);
  const mark = hazardMark(step.cautions, cautions);
  const head = [
    `${indent}${labels.step(step)} (${formatMoney(step.price)})${step.examined === false ? `, ${planWords.notExamined}` : ''}`,
    ...(mark === '' ? [] : [`${indent}  ${mark}`]),
  ];
  if (step.kind === 'refer') return head;
  const branches = step.branches.flatMap((branch) => {
    const outcome = `${indent}  ${labels.outcome(step, branch.outcome)}, ${formatProbability(branch.probability)}`;
    return branch.then === undefined
      ? [branch.outcome === 'cured' || step.folded === 0 ? outcome : `${outcome} …`]
      : [`${outcome}:`, ...stepLines(branch.then, level + 2, writing)];
  });
  return [...head, ...branches, ...(step.folded > 0 ? [`${indent}  ${planWords.folded(step.folded)}`] : [])];
}
