import { stepFactsOf, type CaseEvent, type CaseState, type Circumstances, type CompiledModel } from '@faultodds/core';
import { printCautions } from '../print/printCautions.ts';
import type { Prompter } from '../terminal/prompter.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** Asks what was opened or closed, and says what can hurt in it. @returns events to record; nothing when left. */
export async function askAccess(
  terminal: Terminal,
  prompter: Prompter,
  {
    compiled,
    state,
    circumstances,
  }: { readonly compiled: CompiledModel; readonly state: CaseState; readonly circumstances: Circumstances },
): Promise<CaseEvent[] | undefined> {
  const { model } = compiled;
  const { openAccess, context } = state;
  const access = await prompter.find(
    'What was opened or closed?',
    model.access.map(({ id, label }) => ({
      value: id,
      label,
      hint: openAccess.includes(id) ? 'open: close it' : 'closed: open it',
    })),
  );
  if (access === undefined) return undefined;
  const isOpen = openAccess.includes(access);
  const kind = isOpen ? 'close-access' : 'open-access';
  printCautions(terminal, model, stepFactsOf(compiled, context, circumstances, { kind, access }).cautions);
  return [{ kind: isOpen ? 'access-closed' : 'access-opened', access }];
}
