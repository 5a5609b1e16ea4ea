import { saveCase, type CompiledModel, type Session } from '@faultodds/core';
import { replaceFile } from '../files/replaceFile.ts';

/** A file in which a case is kept, and what was last read from it or written to it; null: nothing is there yet. */
export interface CaseFile {
  readonly path: string;
  readonly content: Uint8Array | null;
  /** What an editor checks it against, where its writer said so. */
  readonly $schema?: string;
}

/** Writes a case to its file, over what was last read from it or written to it and nothing else. @returns the file as it is now.
 * @throws CommandError it cannot be written, or another program changed it */
export function writeCaseFile(
  compiled: CompiledModel,
  { path, content, ...rest }: CaseFile,
  session: Session,
): CaseFile {
  const text = `${JSON.stringify({ ...rest, ...saveCase(compiled, session) }, null, 2)}\n`;
  replaceFile(path, text, { over: content });
  return { path, content: Buffer.from(text), ...rest };
}
