import type { CompiledModel, Model, ResultEvidence } from '@faultodds/core';
import { askBesideNumbers } from './askBesideNumbers.ts';
import { askReading } from './askReading.ts';
import type { Drafts } from './drafts.ts';
import type { Choice, Prompter } from '../terminal/prompter.ts';
import type { Terminal } from '../terminal/terminal.ts';

const BY_DEGREE = '';
const BY_NUMBERS = '#numbers';

/** Asks what a test showed: numbers where it reads any, an outcome, or how much more like one than another. @returns nothing when left. */
export async function askEvidence(
  terminal: Terminal,
  prompter: Prompter,
  {
    compiled,
    test,
    drafts,
  }: { readonly compiled: CompiledModel; readonly test: Model['tests'][number]; readonly drafts: Drafts },
): Promise<ResultEvidence | undefined> {
  const { label, outcomes, readings = [] } = test;
  const choices = outcomes.map((outcome) => ({ value: outcome.id, label: outcome.label }));
  const numbers = { value: BY_NUMBERS, label: 'Numbers', hint: readings.map((reading) => reading.label).join('; or ') };
  const chosen = await prompter.choose(label.endsWith('?') ? label : `${label}: what did it show?`, [
    ...(readings.length === 0 ? [] : [numbers]),
    ...choices,
    { value: BY_DEGREE, label: 'Not clear: more likely one than another' },
  ]);
  if (chosen === undefined) return undefined;
  if (chosen === BY_NUMBERS) {
    const reading = await askReading(terminal, prompter, { compiled, test, drafts });
    return reading === undefined ? undefined : askBesideNumbers(terminal, prompter, { compiled, test, reading });
  }
  return chosen === BY_DEGREE ? askDegree(prompter, choices) : { outcome: chosen };
}

async function askDegree(prompter: Prompter, choices: readonly Choice[]): Promise<ResultEvidence | undefined> {
  const likelier = await prompter.choose('Which is more likely?', choices);
  if (likelier === undefined) return undefined;
  const other = await prompter.choose(
    'Compared with which?',
    choices.filter(({ value }) => value !== likelier),
  );
  if (other === undefined) return undefined;
  const degree = await prompter.type('How many times as likely? (2: a little, 10: clearly)', '3', (text) =>
    /^\d{1,4}(\.\d+)?$/.test(text) && Number(text) >= 1 ? undefined : 'A number from 1.',
  );
  return degree === undefined ? undefined : { likelihood: { [likelier]: Number(degree), [other]: 1 } };
}
