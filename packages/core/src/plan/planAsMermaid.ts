import { cautionsOfPlan } from './cautionsOfPlan.ts';
import { hazardMark } from './hazardMark.ts';
import { planLegend } from './planLegend.ts';
import type { Plan, PlanStep } from './plan.ts';
import type { PlanLabels } from './planLabels.ts';
import type { PlanLanguage } from './planLanguage.ts';

/** A plan as a Mermaid flowchart, from left to right: boxes are steps with their price and the numbers of their cautions, arrows their
 * outcomes; a box beside them holds every caution in full.
 * @example planAsMermaid(plan, planLabels(model, english), english).split('\n').slice(0, 2) // ['flowchart LR', '  s0["tell<br/>20 units"]'] */
export function planAsMermaid(plan: Plan, labels: PlanLabels, language: PlanLanguage): string {
  const { planWords, formatMoney, formatProbability } = language;
  const cautions = cautionsOfPlan(plan.root);
  const lines = ['flowchart LR'];
  let count = 0;
  const write = (step: PlanStep): string => {
    const name = `s${count}`;
    count += 1;
    const mark = hazardMark(step.cautions, cautions);
    const marked = mark === '' ? '' : `<br/>${mark}`;
    const doubtful = step.examined === false ? `<br/>${planWords.notExamined}` : '';
    const folded = step.folded > 0 ? `<br/>${planWords.folded(step.folded)}` : '';
    lines.push(`  ${name}["${escape(labels.step(step))}<br/>${formatMoney(step.price)}${doubtful}${marked}${folded}"]`);
    for (const { outcome, probability, then } of step.branches) {
      if (then === undefined) continue;
      const arrow = `${escape(labels.outcome(step, outcome))}, ${formatProbability(probability)}`;
      lines.push(`  ${name} -->|"${arrow}"| ${write(then)}`);
    }
    const cured = step.branches.find(({ outcome }) => outcome === 'cured');
    if (cured !== undefined) {
      lines.push(
        `  ${name} -->|"${formatProbability(cured.probability)}"| ${name}end(["${escape(labels.outcome(step, 'cured'))}"])`,
      );
    }
    return name;
  };
  write(plan.root);
  lines.push(`  cautions["${planLegend(plan, labels, language).map(escape).join('<br/>')}"]`);
  return `${lines.join('\n')}\n`;
}

/** Labels are data: quotes and brackets must not end the text of a box. */
function escape(text: string): string {
  return text.replace(/[#"<>&;]/g, (sign) => `#${sign.codePointAt(0)};`);
}
