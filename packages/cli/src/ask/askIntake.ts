import {
  contextEffects,
  FaultoddsError,
  questionsToAsk,
  type CaseEvent,
  type CompiledModel,
  type Facts,
  type IntakeQuestion,
} from '@faultodds/core';
import { foldText } from '../terminal/foldText.ts';
import { describeIntakeQuestion } from '../print/describeIntakeQuestion.ts';
import { printContextEffect } from '../print/printContextEffect.ts';
import type { Prompter } from '../terminal/prompter.ts';
import type { Terminal } from '../terminal/terminal.ts';

const NOT_KNOWN = '#not-known';
const ENOUGH = '#enough';

/** Asks the intake questions that are open, one after the other: those that causes or tests wait for first, then by how far an answer could
 * move the ranking. Says after each answer what it changed. Escape or "That is all" ends it. @param answered takes every answer over at
 * once. */
export async function askIntake(
  terminal: Terminal,
  prompter: Prompter,
  compiled: CompiledModel,
  facts: Facts,
  answered: (event: CaseEvent) => void,
): Promise<void> {
  const passed = new Set<string>();
  let context = facts.context;
  for (;;) {
    const question = questionsToAsk(compiled, { ...facts, context }).find(({ feature }) => !passed.has(feature));
    if (question === undefined) return;
    const value = await askOne(prompter, compiled, question);
    if (value === undefined || value === ENOUGH) return;
    passed.add(question.feature);
    if (value === NOT_KNOWN) continue;
    const next = { ...context, [question.feature]: value };
    try {
      // an answer that does not fit what is on record is told before it is taken
      questionsToAsk(compiled, { ...facts, context: next });
    } catch (error) {
      if (!(error instanceof FaultoddsError)) throw error;
      for (const { message, hint } of error.problems)
        terminal.write(`${foldText(`${message}; ${hint}`, terminal.width, '  ')}\n`);
      continue;
    }
    context = next;
    answered({ kind: 'context-set', feature: question.feature, value });
    const effect = contextEffects(compiled, context).find(({ feature }) => feature === question.feature);
    if (effect !== undefined) printContextEffect(terminal, compiled.model, effect);
  }
}

async function askOne(
  prompter: Prompter,
  { model }: CompiledModel,
  question: IntakeQuestion,
): Promise<string | undefined> {
  const feature = model.context.find(({ id }) => id === question.feature);
  if (feature === undefined) return undefined;
  return prompter.choose(
    `${feature.question} (${describeIntakeQuestion(model, question)})`,
    [
      ...feature.values.map(({ id, label }) => ({ value: id, label })),
      { value: NOT_KNOWN, label: 'Not known', hint: 'changes nothing' },
      { value: ENOUGH, label: 'No more answers' },
    ],
    NOT_KNOWN,
  );
}
