import type { CompiledModel, Model, ResultEvidence } from '@faultodds/core';
import { readingLikelihood, type Reading } from '@faultodds/core/readings';
import { labelOf } from '../print/labelOf.ts';
import { printReading } from '../print/printReading.ts';
import type { Prompter } from '../terminal/prompter.ts';
import type { Terminal } from '../terminal/terminal.ts';

const NOT_SEEN = '#not-seen';

/** Says what the numbers come to; where they leave open which outcome it is, asks what else was seen. */
export async function askBesideNumbers(
  terminal: Terminal,
  prompter: Prompter,
  {
    compiled,
    test,
    reading,
  }: { readonly compiled: CompiledModel; readonly test: Model['tests'][number]; readonly reading: Reading },
): Promise<ResultEvidence | undefined> {
  printReading(terminal, compiled, { test: test.id, reading });
  const { outcomes } = readingLikelihood(compiled, test.id, reading);
  if (outcomes.length < 2) return { reading };
  const outcome = await prompter.choose('The numbers fit more than one result. What else was seen?', [
    ...outcomes.map((id) => ({ value: id, label: labelOf(test.outcomes, id) })),
    { value: NOT_SEEN, label: 'Nothing: the numbers only' },
  ]);
  if (outcome === undefined) return undefined;
  return outcome === NOT_SEEN ? { reading } : { reading, outcome };
}
