import { scaleLinear, scaleLog } from 'd3-scale';
import type { ModelNumber } from '@faultodds/core/doubt';
import { describeNumber } from '@faultodds/core/words';
import { coreLanguage } from '../words/coreLanguage.ts';
import { shortChance } from '../words/shortChance.ts';
import { t } from '../words/t.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** A number as a row with a slider. Positions run from 0 to 1. */
export interface NumberView {
  readonly path: string;
  readonly label: string;
  readonly original: string;
  readonly range: string;
  readonly worth: string;
  readonly source: string;
  readonly judged: boolean;
  readonly at: { readonly low: number; readonly high: number; readonly original: number };
  /** The number at a position of the slider, and the position of a number. */
  valueFrom(position: number): number;
  positionOf(value: number): number;
  inWords(value: number): string;
}

/** How far beyond its range a weight or multiplier may be tried. */
const BEYOND = 4;
const LEAST = 0.001;

/** The view of one number. */
export function numberView(knowledge: Knowledge, number: ModelNumber): NumberView {
  const { path, value, low, high, ess, source, isProbability } = number;
  const scale = isProbability
    ? scaleLinear().domain([LEAST, 1 - LEAST])
    : scaleLog().domain([Math.min(low, value) / BEYOND, Math.max(high, value) * BEYOND]);
  scale.range([0, 1]).clamp(true);
  const inWords = (one: number): string => (isProbability ? shortChance(one) : String(Number(one.toPrecision(2))));
  const kind = knowledge.sourceKind(source);
  return {
    path,
    label: describeNumber(knowledge.model, path, coreLanguage),
    original: t.numbers.original(inWords(value)),
    range: t.numbers.range(inWords(low), inWords(high)),
    worth: t.numbers.worth(String(Number(ess.toPrecision(2)))),
    source: t.car.source(t.car.kinds[kind], knowledge.sourceText(source)),
    judged: kind === 'judgement',
    at: { low: scale(low), high: scale(high), original: scale(value) },
    valueFrom: (position) => scale.invert(position),
    positionOf: (one) => scale(one),
    inWords,
  };
}
