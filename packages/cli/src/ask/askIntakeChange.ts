import {
  caseState,
  contextEffects,
  factsOf,
  FaultoddsError,
  questionsToAsk,
  type CaseEvent,
  type CompiledModel,
  type Facts,
  type Session,
} from '@faultodds/core';
import { describeEngine } from '@faultodds/core/words';
import { english } from '@faultodds/core/words/en';
import { askEngine } from './askEngine.ts';
import { describeIntakeQuestion } from '../print/describeIntakeQuestion.ts';
import type { Drafts } from './drafts.ts';
import { labelOf } from '../print/labelOf.ts';
import { printContextEffect } from '../print/printContextEffect.ts';
import type { Prompter } from '../terminal/prompter.ts';
import type { Terminal } from '../terminal/terminal.ts';

const NOT_KNOWN = '#not-known';
const ENGINE = '#engine';

/** Asks which intake answer is given, changed or taken back; the engine is one of them. @returns events to record; nothing when left. */
export async function askIntakeChange(
  terminal: Terminal,
  prompter: Prompter,
  {
    compiled,
    session,
    drafts,
  }: { readonly compiled: CompiledModel; readonly session: Session; readonly drafts: Drafts },
): Promise<CaseEvent[] | undefined> {
  const { model } = compiled;
  const state = caseState(session);
  const facts = factsOf(state);
  const open = questionsToAsk(compiled, facts);
  const answered = model.context.filter(({ id }) => facts.context[id] !== undefined);
  const chosen = await prompter.find('Which intake fact?', [
    {
      value: ENGINE,
      label: 'Cylinders, and which one misfires',
      ...(state.engine === undefined ? {} : { hint: `now: ${describeEngine(state.engine, english)}` }),
    },
    ...open.map((question) => ({
      value: question.feature,
      label: labelOf(model.context, question.feature),
      hint: describeIntakeQuestion(model, question),
    })),
    ...answered.map(({ id, label, values }) => ({
      value: id,
      label,
      hint: `now: ${labelOf(values, facts.context[id] ?? '')}`,
    })),
  ]);
  if (chosen === ENGINE) {
    const engine = await askEngine(prompter, { known: state.engine ?? drafts.newEngine ?? drafts.guessedEngine });
    drafts.newEngine = undefined;
    return engine === undefined ? undefined : [{ kind: 'engine-set', ...engine }];
  }
  const feature = model.context.find(({ id }) => id === chosen);
  if (feature === undefined) return undefined;
  const value = await prompter.choose(
    feature.question,
    [
      ...feature.values.map(({ id, label }) => ({ value: id, label })),
      { value: NOT_KNOWN, label: 'Not known', hint: 'changes nothing' },
    ],
    facts.context[feature.id] ?? NOT_KNOWN,
  );
  if (value === undefined) return undefined;
  if (value === NOT_KNOWN) {
    return facts.context[feature.id] === undefined ? [] : [{ kind: 'context-cleared', feature: feature.id }];
  }
  const context = { ...facts.context, [feature.id]: value };
  if (isPossible(compiled, { ...facts, context })) {
    const effect = contextEffects(compiled, context).find((one) => one.feature === feature.id);
    if (effect !== undefined) printContextEffect(terminal, model, effect);
  }
  return [{ kind: 'context-set', feature: feature.id, value }];
}

/** What is not possible is told when it is recorded, which then changes nothing. */
function isPossible(compiled: CompiledModel, facts: Facts): boolean {
  try {
    questionsToAsk(compiled, facts);
    return true;
  } catch (error) {
    if (error instanceof FaultoddsError) return false;
    throw error;
  }
}
