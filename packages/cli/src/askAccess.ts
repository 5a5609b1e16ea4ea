import type { CaseEvent, CaseState, Model } from '@faultodds/core';
import type { Prompter } from './prompter.ts';

/** Asks what was opened or closed. @returns events to record; nothing when left. */
export async function askAccess(
  prompter: Prompter,
  model: Model,
  { openAccess }: CaseState,
): Promise<CaseEvent[] | undefined> {
  const access = await prompter.find(
    'What was opened or closed?',
    model.access.map(({ id, label }) => ({
      value: id,
      label,
      hint: openAccess.includes(id) ? 'open: close it' : 'closed: open it',
    })),
  );
  if (access === undefined) return undefined;
  return [{ kind: openAccess.includes(access) ? 'access-closed' : 'access-opened', access }];
}
