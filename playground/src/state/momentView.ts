import type { Explanation } from '@faultodds/core';
import {
  describeObservation,
  formatProbability,
  sentenceForObservation,
  sentenceWithoutObservation,
} from '@faultodds/core/words/en';
import { shortChance } from '../words/shortChance.ts';
import { t } from '../words/en.ts';
import type { Knowledge } from './knowledge.ts';
import { weightInWords } from './whyView.ts';

/** One column of the picture, read in full. */
export interface MomentView {
  readonly heading: string;
  readonly sentences: readonly string[];
  readonly rows: readonly MoverRow[];
  /** Id of the observation, '' at the start. */
  readonly observation: string;
}

/** A cause the observation moved. */
export interface MoverRow {
  readonly label: string;
  readonly before: string;
  readonly after: string;
  readonly weight: string;
  /** How often an engine with this cause would show this; '' when it was entered by degree. */
  readonly seen: string;
}

/** What happened at a column, why, and what the ranking would be without it. @param column id of a column of the picture. */
export function momentView(knowledge: Knowledge, explanation: Explanation, column: string): MomentView {
  const at = explanation.observations.findIndex(({ observation }) => observation.id === column);
  const step = explanation.observations[at];
  if (!step) {
    const atCar = column === 'car' && Object.keys(explanation.facts.context).length > 0;
    const [heading, text] = atCar ? [t.moment.car, t.moment.carText] : [t.moment.any, t.moment.anyText];
    return { heading, sentences: [text], rows: [], observation: '' };
  }
  const byDegree = step.observation.kind === 'result' && step.observation.outcome === undefined;
  return {
    heading: t.moment.result(at + 1, describeObservation(knowledge.model, step.observation)),
    sentences: [
      sentenceForObservation(knowledge.model, step),
      sentenceWithoutObservation(knowledge.model, explanation, at),
    ],
    rows: step.movers.map(({ cause, before, after, weightDecibans }) => ({
      label: knowledge.causeLabel(cause),
      before: shortChance(before),
      after: shortChance(after),
      weight: weightInWords(weightDecibans),
      seen: byDegree ? '' : formatProbability(step.likelihoodByCause[cause] ?? 0),
    })),
    observation: column,
  };
}
