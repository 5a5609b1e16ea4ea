import { type ContextFeature, type IntakeQuestion, questionsToAsk } from '@faultodds/core';
import { shortChance } from '../words/shortChance.ts';
import { t } from '../words/t.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** An intake question in the order it is asked. */
export interface QuestionView {
  readonly feature: ContextFeature;
  /** Causes that cannot be considered until this is answered. */
  readonly opensUp: readonly string[];
}

/** Questions that causes or tests wait for, those that can move the ranking most, and the rest. */
export interface IntakeView {
  readonly required: readonly QuestionView[];
  readonly telling: readonly QuestionView[];
  readonly rest: readonly QuestionView[];
}

const TELLING = 6;

/** The questions in core's order for a car nothing is known of: answering one moves none of the others from under the thumb. */
export function intakeView({ compiled, model, causeLabel }: Knowledge): IntakeView {
  const features = new Map(model.context.map((feature) => [feature.id, feature]));
  const asked = questionsToAsk(compiled, { context: {}, observations: [] });
  const views = (questions: readonly IntakeQuestion[]): QuestionView[] =>
    questions.map(({ feature, bringsIn }) => ({ feature: features.get(feature)!, opensUp: bringsIn.map(causeLabel) }));
  const required = asked.filter(({ bringsIn }) => bringsIn.length > 0);
  const others = asked.filter(({ bringsIn }) => bringsIn.length === 0).sort((a, b) => b.couldMove - a.couldMove);
  return {
    required: views(required),
    telling: views(others.slice(0, TELLING)),
    rest: views(others.slice(TELLING)),
  };
}

/** The question most worth asking now, and what its answer could do; null when all are answered. */
export function askNextView(
  { model }: Knowledge,
  questions: readonly IntakeQuestion[] | undefined,
): { readonly feature: string; readonly question: string; readonly could: string } | null {
  const [next] = questions ?? [];
  if (next === undefined) return null;
  const { feature, couldMove, bringsIn, enables } = next;
  return {
    feature,
    question: model.context.find(({ id }) => id === feature)?.question ?? feature,
    could: [
      t.car.couldMove(shortChance(couldMove)),
      ...(bringsIn.length > 0 ? [t.car.couldBringIn(bringsIn.length)] : []),
      ...(enables.length > 0 ? [t.car.couldEnable(enables.length)] : []),
    ].join(', '),
  };
}
