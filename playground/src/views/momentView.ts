import type { ObservationMove } from '@faultodds/core/explanation';
import { describeObservation, sentenceForObservation, sentenceWithoutObservation } from '@faultodds/core/words';
import { coreLanguage } from '../words/coreLanguage.ts';
import type { FigureTable } from '../figures/figureTable.ts';
import { shortChance } from '../words/shortChance.ts';
import { t } from '../words/t.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import { rankingWithout } from './rankingWithout.ts';
import { moveAt, type RankingHistory } from '../state/rankingHistory.ts';
import { weightInWords } from './whyView.ts';

/** One column of the picture, read in full. */
export interface MomentView {
  readonly heading: string;
  readonly sentences: readonly string[];
  readonly rows: readonly MoverRow[];
  /** The cause it moved most, as engines out of 1000; null when it moved none. */
  readonly engines: EnginesView | null;
  /** Id of the observation, '' at the start. */
  readonly observation: string;
}

/** Two grids of 1000 engines, with their finding and table. */
interface EnginesView {
  readonly title: string;
  readonly grids: readonly { readonly caption: string; readonly count: number }[];
  readonly table: FigureTable;
}

/** A cause the observation moved. */
interface MoverRow {
  readonly label: string;
  readonly before: string;
  readonly after: string;
  readonly weight: string;
  /** How often an engine with this cause would show this; '' when it was entered by degree. */
  readonly seen: string;
}

/** What happened at a column, why, and what the ranking would be without it. @param column id of a column of the picture. */
export function momentView(knowledge: Knowledge, history: RankingHistory, column: string): MomentView {
  const { facts, moments } = history;
  const at = facts.observations.findIndex(({ id }) => id === column);
  const step = moveAt(history, at);
  if (!step) {
    const atCar = column === 'car' && Object.keys(facts.context).length > 0;
    const [heading, text] = atCar ? [t.moment.car, t.moment.carText] : [t.moment.any, t.moment.anyText];
    return { heading, sentences: [text], rows: [], engines: null, observation: '' };
  }
  const byDegree = step.observation.kind === 'result' && step.observation.outcome === undefined;
  return {
    heading: t.moment.result(at + 1, describeObservation(knowledge.model, step.observation, coreLanguage)),
    sentences: [
      sentenceForObservation(knowledge.model, step, coreLanguage),
      sentenceWithoutObservation(
        knowledge.model,
        { beliefs: moments, observations: [{ rankingWithout: rankingWithout(knowledge, facts, column) }] },
        0,
        coreLanguage,
      ),
    ],
    rows: step.movers.map(({ cause, before, after, weightDecibans }) => ({
      label: knowledge.causeLabel(cause),
      before: shortChance(before),
      after: shortChance(after),
      weight: weightInWords(weightDecibans),
      seen: byDegree ? '' : coreLanguage.formatProbability(step.likelihoodByCause[cause] ?? 0),
    })),
    engines: enginesView(knowledge, step),
    observation: column,
  };
}

function enginesView({ causeLabel }: Knowledge, { movers, of1000 }: ObservationMove): EnginesView | null {
  const [top] = movers;
  if (!top) return null;
  const words = t.engines;
  const counted = (count: number): string => (count < 1 ? words.none : count > 999 ? words.all : String(count));
  const before = of1000.before[top.cause] ?? 0;
  const after = of1000.after[top.cause] ?? 0;
  return {
    title: words.title(causeLabel(top.cause), counted(before), counted(after)),
    grids: [
      { caption: words.before(counted(before)), count: before },
      { caption: words.after(counted(after)), count: after },
    ],
    table: {
      caption: words.tableCaption,
      heads: words.heads,
      rows: Object.keys(of1000.after).map((cause) => [
        causeLabel(cause),
        counted(of1000.before[cause] ?? 0),
        counted(of1000.after[cause] ?? 0),
      ]),
    },
  };
}
