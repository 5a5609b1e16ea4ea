import type { Explanation } from '@faultodds/core';
import type { FigureTable } from '../figures/figureTable.ts';
import type { WeightRow } from '../figures/weightRow.ts';
import { shortChance } from '../words/shortChance.ts';
import { t } from '../words/t.ts';
import type { Knowledge } from './knowledge.ts';

/** What speaks for and against one cause. */
export interface WhyView {
  readonly title: string;
  readonly rows: readonly WeightRow[];
  readonly start: string;
  readonly end: string;
  readonly table: FigureTable;
}

/** Below this a weight is said to say nothing: it would print as 0. */
const LEAST_PRINTED = 0.05;

/** Arranges the weights core found for one cause. */
export function whyView(knowledge: Knowledge, explanation: Explanation, cause: string): WhyView {
  const { beliefs, observations } = explanation;
  const start = shortChance(beliefs[0].posterior[cause] ?? 0);
  const end = shortChance((beliefs.at(-1) ?? beliefs[0]).posterior[cause] ?? 0);
  const rows = observations.map(({ observation, weightDecibans }, at): WeightRow => {
    const { what, outcome } = knowledge.observed(observation);
    const decibans = weightDecibans[cause] ?? 0;
    return {
      id: observation.id,
      mark: String(at + 1),
      label: t.rankShift.short(what, outcome),
      decibans,
      words: weightInWords(decibans),
    };
  });
  return {
    title: t.why.title(knowledge.causeLabel(cause), end),
    rows,
    start,
    end,
    table: {
      caption: t.why.tableCaption,
      heads: t.why.heads,
      rows: observations.map(({ before, after }, at) => [
        t.why.row(rows[at]?.mark ?? '', rows[at]?.label ?? ''),
        rows[at]?.words ?? '',
        shortChance(before[cause] ?? 0),
        shortChance(after[cause] ?? 0),
      ]),
    },
  };
}

/** A weight with its direction; two significant digits. */
export function weightInWords(decibans: number): string {
  if (decibans === Infinity) return t.why.onlyThis;
  if (decibans === -Infinity) return t.why.excludes;
  const size = Math.abs(decibans);
  if (size < LEAST_PRINTED) return t.why.saysNothing;
  const printed = String(Number(size.toPrecision(2)));
  return decibans > 0 ? t.why.speaksFor(printed) : t.why.speaksAgainst(printed);
}
