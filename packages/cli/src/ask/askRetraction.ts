import type { CaseEvent, CaseState, Model } from '@faultodds/core';
import { describeObservation } from '@faultodds/core/words';
import { english } from '@faultodds/core/words/en';
import type { Prompter } from '../terminal/prompter.ts';

/** Asks which result is taken back. @returns events to record; nothing when left. */
export async function askRetraction(
  prompter: Prompter,
  model: Model,
  { observations }: CaseState,
): Promise<CaseEvent[] | undefined> {
  const id = await prompter.choose(
    'Which result do you want to take back?',
    observations.map((observation) => ({
      value: observation.id,
      label: describeObservation(model, observation, english),
    })),
  );
  return id === undefined ? undefined : [{ kind: 'observation-retracted', id }];
}
