import type { CaseEvent, CaseState, Model } from '@faultodds/core';
import type { Prompter } from '../terminal/prompter.ts';

/** Asks what is at hand: what the case says, or else what most workshops have, is chosen already. @returns events to record; nothing when
 * left, so that everything counts as at hand. */
export async function askEquipment(
  prompter: Prompter,
  model: Model,
  { equipment: known }: Pick<CaseState, 'equipment'>,
): Promise<CaseEvent[] | undefined> {
  if (model.equipment.length === 0) return undefined;
  const equipment = await prompter.chooseSeveral(
    'Which equipment is at hand? Tests that need other equipment are left out',
    model.equipment.map(({ id, label }) => ({ value: id, label })),
    known ?? model.equipment.filter(({ common }) => common).map(({ id }) => id),
  );
  if (equipment === undefined || (known !== undefined && known.join() === equipment.join())) return undefined;
  return [{ kind: 'equipment-set', equipment }];
}
