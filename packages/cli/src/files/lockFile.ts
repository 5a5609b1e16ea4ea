import { lstatSync, readFileSync, readlinkSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { CommandError } from '../terminal/commandError.ts';
import { errnoOf } from './errnoOf.ts';

/** Ten seconds in all: a save takes milliseconds, but on a busy machine many may queue. */
const TRIES = 2000;
const PAUSE_MS = 5;
/** So long, what names nobody may be the lock of one that is about to write its number, where links cannot be made. */
const GRACE = 20;

/** Does something to a file while no other faultodds can: the number of this process stands in a hidden file beside it for as long. What a
 * killed process left there is taken away. @param most how often it is tried, 5 ms apart
 * @throws CommandError another one holds it for too long; what `work` and the file system throw */
export function lockFile<T>(path: string, work: () => T, most: number = TRIES): T {
  const lock = join(dirname(path), `.${basename(path)}.lock`);
  for (let tries = 1; !take(lock); tries += 1) {
    if (tries === most)
      throw new CommandError(`'${path}' is being written by another faultodds; if none is running, delete '${lock}'`);
    const holder = holderOf(lock);
    if (holder === undefined) continue; // given back a moment ago
    if (Number.isNaN(holder) ? tries < GRACE : isRunning(holder))
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE_MS);
    else takeAway(lock, holder);
  }
  try {
    return work();
  } finally {
    rmSync(lock, { force: true });
  }
}

/** A link that leads to the number appears with it at once, and only where nothing is. A file, where links cannot be made (Windows). */
function take(lock: string): boolean {
  try {
    symlinkSync(`${process.pid}`, lock);
    return true;
  } catch (error) {
    if (errnoOf(error) === 'EEXIST') return false;
  }
  try {
    writeFileSync(lock, `${process.pid}`, { flag: 'wx' });
    return true;
  } catch (error) {
    if (errnoOf(error) === 'EEXIST') return false;
    throw error;
  }
}

/** @returns undefined: there is no lock any more; NaN: what stands there names nobody */
function holderOf(lock: string): number | undefined {
  try {
    const text = lstatSync(lock).isSymbolicLink() ? readlinkSync(lock) : readFileSync(lock, 'utf8');
    return /^\d+$/.test(text) ? Number(text) : NaN;
  } catch (error) {
    // EINVAL: another one's place was taken in between
    if (errnoOf(error) === 'ENOENT' || errnoOf(error) === 'EINVAL') return undefined;
    throw error;
  }
}

/** Takes the lock of a process that has ended away; should another one have taken its place meanwhile, that one is put back. */
function takeAway(lock: string, holder: number): void {
  const aside = `${lock}.${process.pid}`;
  try {
    renameSync(lock, aside);
    const away = holderOf(aside);
    if (away !== undefined && !Object.is(away, holder)) symlinkSync(`${away}`, lock);
  } catch (error) {
    if (errnoOf(error) !== 'ENOENT' && errnoOf(error) !== 'EEXIST') throw error;
  } finally {
    rmSync(aside, { force: true });
  }
}

function isRunning(holder: number): boolean {
  // this process holds nothing here: the number was given out again
  if (holder === process.pid) return false;
  try {
    process.kill(holder, 0);
    return true;
  } catch (error) {
    return errnoOf(error) === 'EPERM';
  }
}
