import {
  caseState,
  nextObservationId,
  stepFactsOf,
  type CaseEvent,
  type Circumstances,
  type CompiledModel,
  type Session,
} from '@faultodds/core';
import { usualCaution } from '@faultodds/core/words/en';
import { foldText } from '../terminal/foldText.ts';
import { printCautions } from '../print/printCautions.ts';
import type { Prompter } from '../terminal/prompter.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** Asks which repair was tried (unless it is given) and whether it helped. @returns events to record; nothing when left. */
export async function askRepair(
  terminal: Terminal,
  prompter: Prompter,
  {
    compiled,
    session,
    circumstances,
    repair: given,
  }: {
    readonly compiled: CompiledModel;
    readonly session: Session;
    readonly circumstances: Circumstances;
    readonly repair?: string | undefined;
  },
): Promise<CaseEvent[] | undefined> {
  const { model } = compiled;
  const choices = model.repairs.map(({ id, label }) => ({ value: id, label }));
  const repair = given ?? (await prompter.find('Which repair?', choices));
  if (repair === undefined) return undefined;
  const { context } = caseState(session);
  const { cautions } = stepFactsOf(compiled, context, circumstances, { kind: 'proved-repair', repair });
  printCautions(terminal, model, cautions);
  terminal.write(`${foldText(usualCaution, terminal.width, '  ')}\n`);
  const helped = await prompter.choose('What about the misfire now?', [
    { value: 'stays', label: 'It is still there' },
    { value: 'gone', label: 'It is gone', hint: 'checked under the conditions in which it occurred' },
  ]);
  if (helped === undefined) return undefined;
  return [{ kind: 'repair-tried', id: nextObservationId(session), repair, cured: helped === 'gone' }];
}
