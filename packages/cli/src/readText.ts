import { readFileSync } from 'node:fs';
import { CommandError } from './commandError.ts';

/** The text of a file, or of standard input for `-`.
 * @throws CommandError when it cannot be read */
export function readText(path: string): string {
  try {
    return readFileSync(path === '-' ? 0 : path, 'utf8').replace(/^\uFEFF/, '');
  } catch (error) {
    throw new CommandError(`cannot read '${path}': ${reason(error)}`);
  }
}

function reason(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  if (code === 'ENOENT') return 'there is no such file';
  if (code === 'EISDIR') return 'it is a folder';
  if (code === 'EACCES') return 'permission denied';
  return error instanceof Error ? error.message : String(error);
}
