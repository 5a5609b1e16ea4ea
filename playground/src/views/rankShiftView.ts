import type { MomentRanking } from '@faultodds/core/explanation';
import type { FigureTable } from '../figures/figureTable.ts';
import type { RankShiftColumn, RankShiftLine } from '../figures/rankShift.ts';
import { shortChance } from '../words/shortChance.ts';
import { t } from '../words/t.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import type { RankingHistory } from '../state/rankingHistory.ts';

/** The rank shift picture with the finding and the table that go with it. */
export interface RankShiftView {
  readonly columns: readonly RankShiftColumn[];
  readonly lines: readonly RankShiftLine[];
  readonly others: string;
  readonly title: string;
  readonly table: FigureTable;
}

const LETTERS = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H'];
const ALWAYS_SHOWN = 5;

/** Columns of the table at most, the newest: thousands of cells are read by nobody. */
const TABLED = 40;

/** Arranges what core ranked: picks the causes that get a line, never calculates one. */
export function rankShiftView(knowledge: Knowledge, history: RankingHistory): RankShiftView {
  const moments = momentsOf(knowledge, history);
  const final = (moments.at(-1) ?? moments[0])!.belief;
  const lined = linedCauses(moments.map(({ belief }) => belief));
  const lines = final.ranking
    .filter(({ cause }) => lined.has(cause))
    .map(({ cause }, rank) => ({ cause, letter: LETTERS[rank] ?? '', label: knowledge.causeLabel(cause) }));
  const rest = final.ranking.filter(({ cause }) => !lined.has(cause));
  const columns = moments.map(({ id, mark, label, said, belief }): RankShiftColumn => {
    const leader = belief.ranking[0]!;
    return {
      id,
      mark,
      label,
      spoken: t.rankShift.spoken(said, knowledge.causeLabel(leader.cause), shortChance(leader.probability)),
      chances: belief.posterior,
      ceilingOfOthers: belief.ranking.find(({ cause }) => !lined.has(cause))?.probability ?? 0,
    };
  });
  return {
    columns,
    lines,
    others: rest[0] ? t.rankShift.others(rest.length, shortChance(rest[0].probability)) : '',
    title: finding(knowledge, history.facts.observations.length === 0 ? final : (history.moments[0] ?? final), final),
    // made when it is read
    get table() {
      const tabled = moments.slice(-TABLED);
      return {
        caption: t.shift.tableCaption(moments.length - tabled.length),
        heads: [t.shift.tableCause, ...tabled.map(({ said }) => said)],
        rows: final.ranking.map(({ cause }) => [
          knowledge.causeLabel(cause),
          ...tabled.map(({ belief }) => shortChance(belief.posterior[cause] ?? 0)),
        ]),
      };
    },
  };
}

interface Moment {
  readonly id: string;
  readonly mark: string;
  readonly label: string;
  readonly said: string;
  readonly belief: MomentRanking;
}

function momentsOf(knowledge: Knowledge, { facts, moments }: RankingHistory): Moment[] {
  const words = t.rankShift;
  const car = { id: 'car', mark: words.carMark, label: words.car, said: words.car, belief: moments[0]! };
  const any = { id: 'any', mark: words.anyMark, label: words.any, said: words.any, belief: knowledge.anyEngine };
  const start = Object.keys(facts.context).length > 0 ? [any, car] : [{ ...any, id: 'car' }];
  return [
    ...start,
    ...facts.observations.map((observation, at) => {
      const { what, outcome } = knowledge.observed(observation);
      return {
        id: observation.id,
        mark: String(at + 1),
        label: outcome,
        said: words.result(at + 1, what, outcome),
        belief: moments[at + 1]!,
      };
    }),
  ];
}

/** The leading causes now, then those that stood highest at any moment, at most eight. */
function linedCauses(beliefs: readonly MomentRanking[]): Set<string> {
  const final = beliefs.at(-1)!;
  const peaks = new Map(
    final.ranking.map(({ cause }) => [
      cause,
      beliefs.reduce((most, belief) => Math.max(most, belief.posterior[cause] ?? 0), 0),
    ]),
  );
  const peak = (cause: string): number => peaks.get(cause) ?? 0;
  const lined = new Set(final.ranking.slice(0, ALWAYS_SHOWN).map(({ cause }) => cause));
  const byPeak = final.ranking.map(({ cause }) => cause).sort((a, b) => peak(b) - peak(a));
  for (const cause of byPeak) if (lined.size < LETTERS.length) lined.add(cause);
  return lined;
}

function finding(knowledge: Knowledge, intake: MomentRanking, final: MomentRanking): string {
  const leader = final.ranking[0]!;
  const first = intake.ranking[0]!;
  const [name, chance] = [knowledge.causeLabel(leader.cause), shortChance(leader.probability)];
  if (intake === final) return t.rankShift.leads(name, chance);
  if (first.cause !== leader.cause)
    return t.rankShift.ledBefore(name, chance, knowledge.causeLabel(first.cause), shortChance(first.probability));
  return t.rankShift.rose(name, chance, shortChance(first.probability));
}
