import { newestCaseVersion } from '../session/newestCaseVersion.ts';

/** A case document of an older version as one of the newest; anything else as it came. Version 1 knew no `engine-set`, version 2 neither
 * `model` nor `unplaced`; what they had means the same today. @param input of a version that can be read, see `findVersionProblems`. */
export function migrateCase(input: unknown): unknown {
  const { version } = input as { readonly version?: unknown };
  return version === newestCaseVersion ? input : { ...(input as object), version: newestCaseVersion };
}
