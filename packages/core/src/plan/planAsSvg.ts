import { cautionsOfPlan } from './cautionsOfPlan.ts';
import { hazardMark } from './hazardMark.ts';
import { planLegend } from './planLegend.ts';
import type { Plan, PlanStep } from './plan.ts';
import type { PlanLabels } from './planLabels.ts';
import type { PlanLanguage } from './planLanguage.ts';

const COLUMN = 480;
// Where the line of a step ends and its branches begin, and where they are level again.
const TRUNK = 262;
const BEND = 284;
const ROW = 60;
const MARGIN = 16;
const LETTERS = 36;
const OUTCOME_LETTERS = 24;
// Of the legend: height of a line, and width of a letter on average, rather too wide than too narrow.
const LINE = 16;
const LETTER = 6.5;

interface Placed {
  readonly x: number;
  readonly y: number;
  readonly marks: readonly string[];
}

/** A plan as a standalone SVG drawing that takes the colour of the text around it: steps from left to right, outcomes on the lines
 * between them, thicker where they are likelier; at each step the numbers of its cautions, below the drawing every caution in full.
 * `title` is read out by screen readers. Characters that XML forbids (of control, halves of a pair) are left out.
 * @example planAsSvg(plan, planLabels(model, english), english, 'What to do next').includes('<title>What to do next</title>') // true */
export function planAsSvg(plan: Plan, labels: PlanLabels, language: PlanLanguage, title?: string): string {
  const { planWords, formatMoney, formatProbability } = language;
  const cautions = cautionsOfPlan(plan.root);
  let row = 0;
  let columns = 1;
  const place = (step: PlanStep, level: number): Placed => {
    columns = Math.max(columns, level + 1);
    const x = MARGIN + level * COLUMN;
    const children = step.branches.flatMap(({ outcome, probability, then }) =>
      then === undefined ? [] : [{ outcome, probability, at: place(then, level + 1) }],
    );
    const y = children.length > 0 ? (children[0]!.at.y + children.at(-1)!.at.y) / 2 : MARGIN + ROW * (0.5 + row++);
    const trunk =
      children.length === 0
        ? ''
        : `<path d="M${x + 4},${y} L${x + TRUNK},${y}" fill="none" stroke="currentColor" stroke-opacity="0.5"/>`;
    const lines = children.map(({ outcome, probability, at }) => {
      const name = `${shorten(labels.outcome(step, outcome), OUTCOME_LETTERS)}, ${formatProbability(probability)}`;
      return [
        `<path d="M${x + TRUNK},${y} L${x + BEND},${at.y} L${at.x - 6},${at.y}" fill="none" stroke="currentColor" stroke-opacity="0.5" stroke-width="${(1 + 4 * probability).toFixed(1)}"/>`,
        `<text x="${x + BEND + 4}" y="${at.y - 6}" font-size="10">${escape(name)}</text>`,
      ].join('');
    });
    const cured = step.branches.find(({ outcome }) => outcome === 'cured');
    const note = [
      formatMoney(step.price),
      ...(step.examined === false ? [planWords.notExamined] : []),
      ...(cured === undefined ? [] : [`${labels.outcome(step, 'cured')} ${formatProbability(cured.probability)}`]),
      ...(step.folded > 0 ? [planWords.folded(step.folded)] : []),
    ].join(' · ');
    const mark = hazardMark(step.cautions, cautions);
    const own = [
      step.examined === false
        ? `<circle cx="${x}" cy="${y}" r="3.5" fill="none" stroke="currentColor"/>`
        : `<circle cx="${x}" cy="${y}" r="4" fill="currentColor"/>`,
      `<text x="${x}" y="${y - 9}" font-size="12" font-weight="600"><title>${escape(labels.step(step))}</title>${escape(shorten(labels.step(step), LETTERS))}</text>`,
      `<text x="${x}" y="${y + 16}" font-size="11">${escape(note)}</text>`,
      ...(mark === '' ? [] : [`<text x="${x}" y="${y + 30}" font-size="11" font-weight="600">${mark}</text>`]),
    ].join('');
    return { x, y, marks: [trunk, ...lines, own, ...children.flatMap(({ at }) => at.marks)] };
  };
  const { marks } = place(plan.root, 0);
  const width = MARGIN * 2 + columns * COLUMN;
  const top = MARGIN + row * ROW;
  const lines = planLegend(plan, labels, language).flatMap((text) => fold(text, (width - 2 * MARGIN) / LETTER));
  const legend = lines.map(
    (line, at) => `<text x="${MARGIN}" y="${top + LINE * (at + 2)}" font-size="12">${escape(line)}</text>`,
  );
  const height = top + LINE * (lines.length + 2) + MARGIN;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" font-family="sans-serif" fill="currentColor"><title>${escape(title ?? planWords.title)}</title>${marks.join('')}${legend.join('')}</svg>`;
}

/** Breaks between words; a longer word stays whole. */
function fold(text: string, letters: number): string[] {
  return text.split(' ').reduce<string[]>((lines, word) => {
    const last = lines.at(-1);
    if (last === undefined || last.length + 1 + word.length > letters) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
    return lines;
  }, []);
}

function shorten(text: string, letters: number): string {
  return text.length > letters ? `${text.slice(0, letters - 1)}…` : text;
}

// What is no Char of XML 1.0 (fifth edition, production 2), for which there is no escape either.
// oxlint-disable-next-line no-control-regex
const FORBIDDEN = /[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu;

function escape(text: string): string {
  return text.replace(FORBIDDEN, '').replace(/[&<>"]/g, (sign) => `&#${sign.codePointAt(0)};`);
}
