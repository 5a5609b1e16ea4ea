import {
  closeSync,
  fchmodSync,
  fsyncSync,
  linkSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
  type Stats,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { CommandError } from '../terminal/commandError.ts';
import { readBytesIfThere } from './readBytesIfThere.ts';
import { errnoOf } from './errnoOf.ts';
import { lockFile } from './lockFile.ts';
import { reasonOf } from './reasonOf.ts';

/** Writes a whole file or nothing: to a hidden file beside it that takes its place once it is on the disk. A full disk or a kill leaves what
 * was there. A link is followed, rights are kept; a device or a pipe is simply written to.
 * @param options.over what the file must still hold, null: it must not exist; not said: whatever is there is replaced. A file that is gone
 * by now is written anew. Another faultodds cannot come between the look and the replacement; of other programs, the file system can
 * be asked only just before.
 * @throws CommandError it cannot be written, or it holds something else by now: then nothing has changed */
export function replaceFile(
  path: string,
  text: string,
  { over }: { readonly over?: Uint8Array | null | undefined } = {},
): void {
  try {
    const there = statSync(path, { throwIfNoEntry: false });
    if (there !== undefined && !there.isFile() && !there.isDirectory()) {
      writeFileSync(path, text);
      return;
    }
    const target = there === undefined ? path : realpathSync(path);
    lockFile(target, () => putInPlace(target, text, there, () => mayReplace(target, over)));
  } catch (error) {
    if (error instanceof CommandError) throw error;
    throw new CommandError(`cannot write '${path}': ${reasonOf(error)}`);
  }
}

function putInPlace(target: string, text: string, there: Stats | undefined, mayReplace: () => boolean): void {
  const fresh = join(dirname(target), `.${basename(target)}.new`);
  // left behind by a killed process, or laid there as a trap: never written through
  rmSync(fresh, { force: true });
  try {
    const file = openSync(fresh, 'wx');
    try {
      writeFileSync(file, text);
      if (there !== undefined) fchmodSync(file, there.mode & 0o7777);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    if (mayReplace()) renameSync(fresh, target);
    else putWhereNothingIs(fresh, target);
  } finally {
    rmSync(fresh, { force: true });
  }
  syncFolder(dirname(target));
}

/** @returns whether what is there may be replaced; not where nothing is. @throws CommandError it is something else than was read */
function mayReplace(target: string, over: Uint8Array | null | undefined): boolean {
  if (over === undefined) return true;
  const now = readBytesIfThere(target);
  if (now === null) return false;
  if (over === null) throw new CommandError(`'${target}' exists`);
  if (!now.equals(over)) throw new CommandError(`'${target}' was changed by another program since it was read`);
  return true;
}

function putWhereNothingIs(fresh: string, target: string): void {
  try {
    // unlike a rename, a link never replaces
    linkSync(fresh, target);
  } catch (error) {
    if (errnoOf(error) === 'EEXIST') throw new CommandError(`'${target}' exists`);
    // a file system without links
    renameSync(fresh, target);
  }
}

/** The name is on the disk, too; where folders cannot be opened (Windows) the system sees to it. */
function syncFolder(folder: string): void {
  try {
    const handle = openSync(folder, 'r');
    try {
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
  } catch {
    // the file itself is written: no reason to call it not saved
  }
}
