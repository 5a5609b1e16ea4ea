import {
  contextEffects,
  FaultoddsError,
  questionsToAsk,
  type CaseEvent,
  type CompiledModel,
  type Facts,
} from '@faultodds/core';
import { describeIntakeQuestion } from './describeIntakeQuestion.ts';
import { labelOf } from './labelOf.ts';
import { printContextEffect } from './printContextEffect.ts';
import type { Prompter } from './prompter.ts';
import type { Terminal } from './terminal.ts';

const NOT_KNOWN = '#not-known';

/** Asks which intake answer is given, changed or taken back. @returns events to record; nothing when left. */
export async function askIntakeChange(
  terminal: Terminal,
  prompter: Prompter,
  compiled: CompiledModel,
  facts: Facts,
): Promise<CaseEvent[] | undefined> {
  const { model } = compiled;
  const open = questionsToAsk(compiled, facts);
  const answered = model.context.filter(({ id }) => facts.context[id] !== undefined);
  const chosen = await prompter.find('Which intake fact?', [
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
  const feature = model.context.find(({ id }) => id === chosen);
  if (feature === undefined) return undefined;
  const value = await prompter.choose(feature.question, [
    ...feature.values.map(({ id, label }) => ({ value: id, label })),
    { value: NOT_KNOWN, label: 'Not known', hint: 'changes nothing' },
  ]);
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
