import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CompiledModel, Session } from '@faultodds/core';
import { CommandError } from '../terminal/commandError.ts';
import { writeCaseFile } from './writeCaseFile.ts';

/** Where a case is left that nobody saved, in the current folder: else in the system's folder for temporary files, and with a number where
 * that name is taken. */
export const RECOVERY_FILE = 'faultodds-recovered.json';

const MOST = 100;

/** Leaves a case that would be lost where it is found again; never over anything. @returns the file; nothing where none can be written. */
export function saveForRecovery(compiled: CompiledModel, session: Session): string | undefined {
  for (const folder of ['.', tmpdir()]) {
    for (let number = 1; number <= MOST; number += 1) {
      const name = number === 1 ? RECOVERY_FILE : RECOVERY_FILE.replace('.json', `-${number}.json`);
      try {
        return writeCaseFile(compiled, { path: join(folder, name), content: null }, session).path;
      } catch (error) {
        if (!(error instanceof CommandError)) throw error;
      }
    }
  }
  return undefined;
}
