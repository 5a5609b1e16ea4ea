import { type Reading, readingLikelihood } from '@faultodds/core/readings';
import { describeReadingRemark } from '@faultodds/core/words';
import { coreLanguage } from '../words/coreLanguage.ts';
import { t } from '../words/t.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** What a reading says, in words, shown where it is typed in. */
export interface ReadingView {
  readonly compared: string;
  readonly littleSaid: boolean;
  /** Best fit first. */
  readonly states: readonly { readonly label: string; readonly fit: string; readonly factor: string }[];
  readonly rule: { readonly verdict: string; readonly text: string; readonly source: string };
  /** Outcomes the number may be called; more than one when it leaves open which. */
  readonly outcomes: readonly { readonly id: string; readonly label: string }[];
  readonly remarks: readonly string[];
}

/** Asks core what a checked reading says. */
export function readingView(knowledge: Knowledge, test: string, reading: Reading): ReadingView {
  const said = readingLikelihood(knowledge.compiled, test, reading);
  const { compared, support, ruleOfThumb, outcomes, saysLittle, remarks } = said;
  const best = Math.max(...support.map(({ likelihood }) => likelihood));
  return {
    compared: compared === undefined ? '' : t.entry.compared(withUnit(compared.value, compared.unit)),
    littleSaid: saysLittle,
    states: support
      .toSorted((a, b) => b.likelihood - a.likelihood)
      .map(({ label, likelihood }) => ({ label, fit: fitOf(likelihood, best), factor: factorOf(likelihood) })),
    rule: {
      verdict: t.entry.verdict[ruleOfThumb.verdict],
      text: ruleOfThumb.text,
      source: knowledge.sourceText(ruleOfThumb.source),
    },
    outcomes: outcomes.map((id) => ({ id, label: knowledge.outcomeLabel(test, id) })),
    remarks: remarks.map((remark) => describeReadingRemark(knowledge.model, test, remark, coreLanguage)),
  };
}

// below three to one a difference is not worth more than a bare mention: the same limit core uses for `saysLittle`
const MENTION = 3;
const CLEAR = 10;
const OVERWHELMING = 100;

/** How well a state fits, beside the one that fits best. */
function fitOf(likelihood: number, best: number): string {
  const words = t.entry.fits;
  if (likelihood * MENTION > best) return words.well;
  if (likelihood * CLEAR > best) return words.open;
  return likelihood * OVERWHELMING > best ? words.badly : words.hardly;
}

function factorOf(likelihood: number): string {
  return likelihood < 0.001 ? t.entry.factorTiny : t.entry.factor(String(Number(likelihood.toPrecision(2))));
}

function withUnit(value: number, unit: string): string {
  const figure = String(Number(value.toPrecision(3)));
  return unit === 'ratio' ? figure : `${figure} ${unit}`;
}
