import { existsSync } from 'node:fs';
import type { CompiledModel, Session } from '@faultodds/core';
import { CommandError } from '../terminal/commandError.ts';
import { foldText } from '../terminal/foldText.ts';
import { writeCaseFile, type CaseFile } from './writeCaseFile.ts';
import { RECOVERY_FILE } from './saveForRecovery.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** How a case is kept while it is worked on. */
export interface SaveState {
  /** Its file; nothing until one is named. */
  readonly file: CaseFile | undefined;
  /** What needs no saving: what stands in the file, or what the work began with. */
  readonly saved: Session['content'];
}

/** Begins to keep a case in a file that is not there yet. @throws CommandError it is, or it cannot be written */
export function saveInNewFile(compiled: CompiledModel, path: string, session: Session): SaveState {
  if (existsSync(path))
    throw new CommandError(`'${path}' exists; 'faultodds ask ${path}' continues with the case in it`);
  return { file: writeCaseFile(compiled, { path, content: null }, session), saved: session.content };
}

/** Whether leaving now would lose something. */
export function isUnsaved({ saved }: SaveState, { content }: Session): boolean {
  return content !== saved && content.events.length > 0;
}

/** Writes a case to its file, where it has one. A file that cannot be written, or that another program changed, is told; the work goes on. */
export function saveChanges(
  terminal: Terminal,
  compiled: CompiledModel,
  saveState: SaveState,
  session: Session,
): SaveState {
  const { file, saved } = saveState;
  if (file === undefined || session.content === saved) return saveState;
  try {
    return { file: writeCaseFile(compiled, file, session), saved: session.content };
  } catch (error) {
    if (!(error instanceof CommandError)) throw error;
    const text = `Not saved: ${error.message}. Nothing is lost here: “Save the case” asks for a file.`;
    terminal.write(`${foldText(text, terminal.width, '  ')}\n`);
    return saveState;
  }
}

/** What becomes of the answers, in a sentence or two. */
export function describeSaving({ file }: SaveState): string {
  return file === undefined
    ? `Answers are saved once you save the case; 'faultodds ask --keep <file>' saves each at once. If the program is terminated, they are in '${RECOVERY_FILE}'.`
    : `Every answer is saved in '${file.path}' at once.`;
}
