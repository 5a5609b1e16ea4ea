import { existsSync, writeFileSync } from 'node:fs';
import { caseState, saveCase, type Session } from '@faultodds/core';
import { foldText } from './foldText.ts';
import type { Prompter } from './prompter.ts';
import type { Terminal } from './terminal.ts';

/** Asks for a file name and writes the case there; asks again before anything is overwritten. @returns whether it is saved. */
export async function saveToFile(terminal: Terminal, prompter: Prompter, session: Session): Promise<boolean> {
  const path = await prompter.type('File', `${caseState(session).id}.json`, (text) =>
    text.trim() === '' ? 'A file name.' : undefined,
  );
  if (path === undefined) return false;
  if (existsSync(path) && (await prompter.confirm(`'${path}' exists. Replace it?`)) !== true) return false;
  try {
    writeFileSync(path, `${JSON.stringify(saveCase(session), null, 2)}\n`);
  } catch (error) {
    terminal.write(`  Not saved: ${error instanceof Error ? error.message : String(error)}\n`);
    return false;
  }
  const next = `Saved. 'faultodds ask ${path}' goes on with it, 'faultodds replay ${path}' prints it.`;
  terminal.write(`${foldText(next, terminal.width, '  ')}\n`);
  return true;
}
