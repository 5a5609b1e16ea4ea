import { type Context, type ContextFeature, updateBelief } from '@faultodds/core';
import { shortChance } from '../words/shortChance.ts';
import type { Knowledge } from './knowledge.ts';

/** An intake question in the order it is asked. */
export interface QuestionView {
  readonly feature: ContextFeature;
  /** Causes that cannot be considered until this is answered. */
  readonly opensUp: readonly string[];
}

/** Questions that causes require, those that touch the most causes, and the rest. */
export interface IntakeView {
  readonly required: readonly QuestionView[];
  readonly telling: readonly QuestionView[];
  readonly rest: readonly QuestionView[];
}

const TELLING = 6;

/** Puts the model's questions in order: what causes require first, then by the number of causes an answer speaks about. */
export function intakeView({ model, causeLabel }: Knowledge): IntakeView {
  const questions = model.context.map((feature) => ({
    feature,
    opensUp: model.causes.filter((cause) => feature.id in (cause.requires ?? {})).map((cause) => causeLabel(cause.id)),
    touched: new Set(feature.values.flatMap((value) => Object.keys(value.multipliers))).size,
  }));
  const required = questions.filter(({ opensUp }) => opensUp.length > 0);
  const others = questions.filter(({ opensUp }) => opensUp.length === 0).sort((a, b) => b.touched - a.touched);
  return { required, telling: others.slice(0, TELLING), rest: others.slice(TELLING) };
}

/** What an answer changed: the causes it speaks about, with their probability at intake without it and with it. */
export function answerChanged(
  { compiled, model, causeLabel }: Knowledge,
  context: Context,
  feature: string,
): readonly { readonly label: string; readonly before: string; readonly after: string }[] {
  const { [feature]: value, ...without } = context;
  const named = model.context.find(({ id }) => id === feature)?.values.find(({ id }) => id === value);
  if (!named) return [];
  const before = updateBelief(compiled, { context: without, observations: [] }).posterior;
  const after = updateBelief(compiled, { context, observations: [] }).posterior;
  const opened = model.causes.filter((cause) => cause.requires?.[feature] === value).map(({ id }) => id);
  return [...new Set([...opened, ...Object.keys(named.multipliers)])]
    .filter((cause) => before[cause] !== after[cause])
    .sort((a, b) => highest(b) - highest(a))
    .slice(0, 4)
    .map((cause) => ({
      label: causeLabel(cause),
      before: shortChance(before[cause] ?? 0),
      after: shortChance(after[cause] ?? 0),
    }));

  function highest(cause: string): number {
    return Math.max(before[cause] ?? 0, after[cause] ?? 0);
  }
}
