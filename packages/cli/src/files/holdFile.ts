import { closeSync, openSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { CommandError } from '../terminal/commandError.ts';
import { errnoOf } from './errnoOf.ts';

const TRIES = 100;
const PAUSE_MS = 5;

/** Does something to a file while every other faultodds keeps its hands off it: the number of this process stands in a hidden file beside
 * it for as long. What a killed process left there is taken away. @throws CommandError another one holds it for too long; what `work`
 * and the file system throw */
export function holdFile<T>(path: string, work: () => T): T {
  const lock = join(dirname(path), `.${basename(path)}.lock`);
  for (let tries = 1; !take(lock); tries += 1) {
    const holder = holderOf(lock);
    // nothing stands in it: its maker is about to write, or was killed before it could
    if (holder === undefined ? tries === TRIES : !isRunning(holder)) rmSync(lock, { force: true });
    else if (tries < TRIES) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE_MS);
    else
      throw new CommandError(`'${path}' is being written by another faultodds; if none is running, delete '${lock}'`);
  }
  try {
    return work();
  } finally {
    rmSync(lock, { force: true });
  }
}

function take(lock: string): boolean {
  let file: number;
  try {
    file = openSync(lock, 'wx');
  } catch (error) {
    if (errnoOf(error) === 'EEXIST') return false;
    throw error;
  }
  try {
    writeSync(file, `${process.pid}`);
    return true;
  } catch (error) {
    rmSync(lock, { force: true });
    throw error;
  } finally {
    closeSync(file);
  }
}

function holderOf(lock: string): number | undefined {
  try {
    const text = readFileSync(lock, 'utf8');
    return /^\d+$/.test(text) ? Number(text) : undefined;
  } catch (error) {
    if (errnoOf(error) === 'ENOENT') return undefined;
    throw error;
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
