import { readdirSync, type Dirent } from 'node:fs';
import { join } from 'node:path';
import { CommandError } from '../terminal/commandError.ts';
import { reasonOf } from './reasonOf.ts';

/** Far above any model in parts; a whole disk has more. */
const MOST_NAMES = 2_000;

/** Every JSON file below a folder, in name order. Links to folders are not followed. @param most names that may lie below it.
 * @throws CommandError a folder cannot be read, or more names lie below it */
export function jsonFilesBelow(folder: string, most: number = MOST_NAMES): string[] {
  let names = 0;
  const below = (path: string): string[] =>
    namesIn(path).flatMap((entry) => {
      names += 1;
      if (names > most) {
        throw new CommandError(
          `more than ${most} files and folders are below '${folder}': this is not a model in parts`,
        );
      }
      const inside = join(path, entry.name);
      if (entry.isDirectory()) return below(inside);
      return (entry.isFile() || entry.isSymbolicLink()) && entry.name.endsWith('.json') ? [inside] : [];
    });
  return below(folder);
}

function namesIn(folder: string): Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  } catch (error) {
    throw new CommandError(`cannot read '${folder}': ${reasonOf(error)}`);
  }
}
