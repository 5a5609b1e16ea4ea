import { nextObservationId, type CaseEvent, type Model, type Session } from '@faultodds/core';
import { sentenceForNotNow, sentenceForTest } from '@faultodds/core/words/en';
import { labelOf } from './labelOf.ts';
import { printCautions } from './printCautions.ts';
import { foldText } from './foldText.ts';
import type { Standing } from './printStanding.ts';
import type { Choice, Prompter } from './prompter.ts';
import type { Terminal } from './terminal.ts';

const BY_DEGREE = '';
type Test = Model['tests'][number];

/** Asks which test was done (unless it is given) and what it showed. @returns events to record; nothing when left. */
export async function askResult(
  terminal: Terminal,
  prompter: Prompter,
  {
    model,
    session,
    standing,
    test: given,
  }: {
    readonly model: Model;
    readonly session: Session;
    readonly standing: Standing;
    readonly test?: string | undefined;
  },
): Promise<CaseEvent[] | undefined> {
  const { advice } = standing;
  const chosen = given ?? (await prompter.find('Which test?', choicesOf(model, standing)));
  const test = model.tests.find(({ id }) => id === chosen);
  if (test === undefined) return undefined;
  for (const text of [test.how, ...(test.note === undefined ? [] : [test.note])]) {
    terminal.write(`${foldText(text, terminal.width, '  ')}\n`);
  }
  const cautions = advice.tests.find((one) => one.test === test.id)?.cautions ?? test.cautions;
  printCautions(terminal, model, cautions);

  const shown = await askOutcome(prompter, test);
  if (shown === undefined) return undefined;
  const faultActive = test.faultMustBeActive ? await askActivity(prompter) : 'yes';
  if (faultActive === undefined) return undefined;
  const id = nextObservationId(session);
  return [{ kind: 'result-recorded', id, test: test.id, ...shown, ...(faultActive === 'yes' ? {} : { faultActive }) }];
}

/** Tests worth their price first, then those that are not proposed. */
function choicesOf(model: Model, { advice }: Standing): Choice[] {
  return [
    ...advice.tests.map((one) => ({
      value: one.test,
      label: labelOf(model.tests, one.test),
      hint: sentenceForTest(one),
    })),
    ...advice.notNow
      .filter(({ reason }) => reason !== 'not-applicable')
      .map((one) => ({ value: one.test, label: labelOf(model.tests, one.test), hint: sentenceForNotNow(model, one) })),
  ];
}

async function askOutcome(
  prompter: Prompter,
  { label, outcomes }: Test,
): Promise<{ outcome: string } | { likelihood: Record<string, number> } | undefined> {
  const choices = outcomes.map((outcome) => ({ value: outcome.id, label: outcome.label }));
  const chosen = await prompter.choose(label.endsWith('?') ? label : `${label}: what did it show?`, [
    ...choices,
    { value: BY_DEGREE, label: 'Not clear: more like one than another' },
  ]);
  if (chosen === undefined) return undefined;
  if (chosen !== BY_DEGREE) return { outcome: chosen };
  const likelier = await prompter.choose('More like which?', choices);
  if (likelier === undefined) return undefined;
  const other = await prompter.choose(
    'Than like which?',
    choices.filter(({ value }) => value !== likelier),
  );
  if (other === undefined) return undefined;
  const degree = await prompter.type('By how many to 1? (2: a little, 10: clearly)', '3', (text) =>
    /^\d{1,4}(\.\d+)?$/.test(text) && Number(text) >= 1 ? undefined : 'A number from 1.',
  );
  return degree === undefined ? undefined : { likelihood: { [likelier]: Number(degree), [other]: 1 } };
}

async function askActivity(prompter: Prompter): Promise<'yes' | 'no' | 'unknown' | undefined> {
  const answer = await prompter.choose('Was the misfire there while you tested?', [
    { value: 'yes', label: 'Yes' },
    { value: 'no', label: 'No', hint: 'the result then says nothing' },
    { value: 'unknown', label: 'Not known' },
  ]);
  return answer === 'yes' || answer === 'no' || answer === 'unknown' ? answer : undefined;
}
