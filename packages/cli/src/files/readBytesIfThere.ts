import { readFileSync, statSync } from 'node:fs';

/** The bytes of a file as they are now; null where there is none, and for a device or a pipe: nothing in it could be lost. Throws what the
 * file system throws. */
export function readBytesIfThere(path: string): Buffer | null {
  const there = statSync(path, { throwIfNoEntry: false });
  return there === undefined || !(there.isFile() || there.isDirectory()) ? null : readFileSync(path);
}
