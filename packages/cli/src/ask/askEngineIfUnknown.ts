import type { Engine } from '@faultodds/core/readings';
import { askEngine } from './askEngine.ts';
import type { Drafts } from './drafts.ts';
import type { Prompter } from '../terminal/prompter.ts';

/** The engine that numbers and codes are about: known from the case or from an answer before, else asked for. @returns nothing when left. */
export async function askEngineIfUnknown(prompter: Prompter, drafts: Drafts): Promise<Engine | undefined> {
  return (
    drafts.newEngine ??
    drafts.caseEngine ??
    (drafts.newEngine = await askEngine(prompter, { known: drafts.guessedEngine }))
  );
}
