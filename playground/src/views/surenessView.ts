import type { Advice, Belief } from '@faultodds/core';
import type { CredibleRanking, AdviceStability } from '@faultodds/core/doubt';
import type { FigureTable } from '../figures/figureTable.ts';
import type { IntervalRow } from '../figures/intervalRow.ts';
import { shortChance } from '../words/shortChance.ts';
import { t } from '../words/t.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** How sure the ranking and the advice are. */
export interface SurenessView {
  readonly title: string;
  readonly rows: readonly IntervalRow[];
  readonly table: FigureTable;
  /** From how many models, or that it is being worked out. */
  readonly progress: string;
  /** '' until known. */
  readonly firm: string;
  /** What other models would do, each with what can hurt in doing it. */
  readonly others: readonly { readonly line: string; readonly cautions: readonly string[] }[];
}

const SHOWN = 6;

/** The ranking with its range, and how firm the advice is; both may still be missing. */
export function surenessView(
  knowledge: Knowledge,
  belief: Belief,
  { ranking, advice }: { readonly ranking?: CredibleRanking; readonly advice?: AdviceStability },
  settled: boolean,
): SurenessView {
  const known = new Map(ranking?.causes.map((one) => [one.cause, one]));
  const top = belief.ranking.slice(0, SHOWN);
  const rows = top.map(({ cause, probability }): IntervalRow => {
    const range = known.get(cause);
    const source = knowledge.cause(cause)?.weight.source ?? '';
    return {
      id: cause,
      label: knowledge.causeLabel(cause),
      chance: shortChance(probability),
      range: range === undefined ? '' : t.doubt.range(shortChance(range.low), shortChance(range.high)),
      at: probability,
      low: range?.low,
      high: range?.high,
      judged: knowledge.sourceKind(source) === 'judgement',
    };
  });
  const [first] = top;
  const lead = known.get(first?.cause ?? '');
  return {
    title:
      first && lead
        ? t.doubt.title(knowledge.causeLabel(first.cause), shortChance(lead.low), shortChance(lead.high))
        : t.doubt.heading,
    rows,
    table: {
      caption: t.doubt.tableCaption,
      heads: t.doubt.heads,
      rows: top.map(({ cause, probability }) => {
        const range = known.get(cause);
        return [
          knowledge.causeLabel(cause),
          shortChance(probability),
          range === undefined ? '' : shortChance(range.low),
          range === undefined ? '' : shortChance(range.high),
          range === undefined ? '' : t.doubt.leads(inHundred(range.leads)),
        ];
      }),
    },
    progress:
      ranking === undefined ? t.doubt.working : settled ? t.doubt.drawn(ranking.draws) : t.doubt.rough(ranking.draws),
    firm: advice === undefined ? '' : firmInWords(advice),
    others: (advice?.others ?? []).slice(0, 3).map(({ best, share }) => ({
      line: t.doubt.otherLine(stepLabel(knowledge, best), inHundred(share)),
      cautions: best.cautions.map(knowledge.cautionText),
    })),
  };
}

/** "Same advice in 87 of 100 plausible models". */
export function firmInWords({ share }: AdviceStability): string {
  return share === 1 ? t.doubt.firmEvery : t.doubt.firm(inHundred(share));
}

/** What an advice says to do, by name. */
export function stepLabel(knowledge: Knowledge, best: Advice['best']): string {
  if (best.kind === 'refer') return t.doubt.refer;
  return best.kind === 'test' ? knowledge.testLabel(best.test) : knowledge.repairLabel(best.repair);
}

function inHundred(share: number): string {
  return share < 0.01 ? t.doubt.lessThanOne : String(Math.min(99, Math.round(share * 100)));
}
