import type { Engine } from '@faultodds/core';
import { askEngine } from './askEngine.ts';
import type { Desk } from './desk.ts';
import type { Prompter } from '../terminal/prompter.ts';

/** The engine that numbers and codes are about: as told or stated, else asked for. @returns nothing when left. */
export async function engineAtDesk(prompter: Prompter, desk: Desk): Promise<Engine | undefined> {
  return desk.told ?? desk.stated ?? (desk.told = await askEngine(prompter, { known: desk.guess }));
}
