import { caseState, type CompiledModel, type Session } from '@faultodds/core';
import { CommandError } from '../terminal/commandError.ts';
import { readBytesIfThere } from '../files/readBytesIfThere.ts';
import { foldText } from '../terminal/foldText.ts';
import { writeCaseFile, type CaseFile } from './writeCaseFile.ts';
import type { Prompter } from '../terminal/prompter.ts';
import { reasonOf } from '../files/reasonOf.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** Asks for a file name and writes the case there; asks again before anything is replaced that is not the case's own file as it was last
 * read or written. @param file the case's own. @returns the file it is kept in from now on; nothing when it is not saved. */
export async function saveToFile(
  terminal: Terminal,
  prompter: Prompter,
  compiled: CompiledModel,
  session: Session,
  file?: CaseFile,
): Promise<CaseFile | undefined> {
  const suggestion = file?.path ?? `${caseState(session).id}.json`;
  const path = await prompter.type('File', suggestion, (text) => (text.trim() === '' ? 'A file name.' : undefined));
  if (path === undefined) return undefined;
  const report = (text: string): void => terminal.write(`${foldText(text, terminal.width, '  ')}\n`);
  try {
    const there = readBytesIfThere(path);
    const isOwn = path === file?.path && file.content !== null && there?.equals(file.content) === true;
    const question =
      path === file?.path ? `'${path}' was changed by another program. Replace it?` : `'${path}' exists. Replace it?`;
    if (there !== null && !isOwn && (await prompter.confirm(question)) !== true) return undefined;
    // what came to stand there since the question was asked is not what was agreed to
    const kept = writeCaseFile(compiled, { ...(path === file?.path ? file : {}), path, content: there }, session);
    report(
      `Saved. Every further answer is saved there too. 'faultodds ask ${path}' continues with it, 'faultodds replay ${path}' prints it.`,
    );
    return kept;
  } catch (error) {
    report(`Not saved: ${error instanceof CommandError ? error.message : `'${path}': ${reasonOf(error)}`}.`);
    return undefined;
  }
}
