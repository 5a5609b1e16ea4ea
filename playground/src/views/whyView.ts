import type { FigureTable } from '../figures/figureTable.ts';
import type { WeightRow } from '../figures/weightRow.ts';
import { shortChance } from '../words/shortChance.ts';
import { t } from '../words/t.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import { moveAt, type RankingHistory } from '../state/rankingHistory.ts';

/** What speaks for and against one cause. */
export interface WhyView {
  readonly title: string;
  readonly rows: readonly WeightRow[];
  readonly start: string;
  readonly end: string;
  /** Results that weigh less than those in `rows`; 0 when all stand there. */
  readonly lighter: number;
  readonly table: FigureTable;
}

/** Below this a weight is said to say nothing: it would print as 0. */
const LEAST_PRINTED = 0.05;
/** Rows at most: the weightiest. */
const ROWS = 40;

/** Arranges the weights core found for one cause, in the order of the results. */
export function whyView(knowledge: Knowledge, history: RankingHistory, cause: string): WhyView {
  const { facts, moments } = history;
  const start = shortChance(moments[0]?.posterior[cause] ?? 0);
  const end = shortChance(moments.at(-1)?.posterior[cause] ?? 0);
  const weighed = facts.observations.map((observation, at) => ({
    observation,
    at,
    decibans: moveAt(history, at)?.weightDecibans[cause] ?? 0,
  }));
  const weightiest = weighed.toSorted((a, b) => Math.abs(b.decibans) - Math.abs(a.decibans)).slice(0, ROWS);
  const shown = weightiest.toSorted((a, b) => a.at - b.at);
  const rows = shown.map(({ observation, at, decibans }): WeightRow => {
    const { what, outcome } = knowledge.observed(observation);
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
    lighter: weighed.length - shown.length,
    table: {
      caption: t.why.tableCaption,
      heads: t.why.heads,
      rows: shown.map(({ at }, row) => [
        t.why.row(rows[row]?.mark ?? '', rows[row]?.label ?? ''),
        rows[row]?.words ?? '',
        shortChance(moments[at]?.posterior[cause] ?? 0),
        shortChance(moments[at + 1]?.posterior[cause] ?? 0),
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
