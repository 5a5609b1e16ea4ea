import type { CaseEvent, CaseState, Model } from '@faultodds/core';
import { labelOf } from './labelOf.ts';
import type { Prompter } from './prompter.ts';

const NOT_KNOWN = '';

/** Asks which intake facts are known, then each of them. @returns events to record; nothing when left. */
export async function askIntake(
  prompter: Prompter,
  model: Model,
  { context }: CaseState,
): Promise<CaseEvent[] | undefined> {
  const chosen = await prompter.gather(
    'What is known at intake? (what is not known changes nothing)',
    model.context.map(({ id, label, question, values }) => {
      const answer = context[id];
      return { value: id, label, hint: answer === undefined ? question : `now: ${labelOf(values, answer)}` };
    }),
  );
  if (chosen === undefined) return undefined;
  const events: CaseEvent[] = [];
  for (const feature of model.context.filter(({ id }) => chosen.includes(id))) {
    const isAnswered = context[feature.id] !== undefined;
    const value = await prompter.choose(feature.question, [
      ...feature.values.map(({ id, label }) => ({ value: id, label })),
      { value: NOT_KNOWN, label: 'Not known' },
    ]);
    if (value === undefined) return undefined;
    if (value !== NOT_KNOWN) events.push({ kind: 'context-set', feature: feature.id, value });
    else if (isAnswered) events.push({ kind: 'context-cleared', feature: feature.id });
  }
  return events;
}
