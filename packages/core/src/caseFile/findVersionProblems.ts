import type { Problem } from '../errors/faultoddsError.ts';
import { foundIn } from '../errors/foundIn.ts';
import { problemFor } from '../validation/problemFor.ts';
import { newestCaseVersion as newest } from '../session/newestCaseVersion.ts';

/** Why a value is not a case this version can read, before its details are looked at: one problem at most. */
export function findVersionProblems(input: unknown): Problem[] {
  if (typeof input !== 'object' || input === null || Array.isArray(input)) {
    return [problemFor('type-wrong/case', '', {})];
  }
  const { format, version } = input as { readonly format?: unknown; readonly version?: unknown };
  if (format !== 'faultodds-case') return [problemFor('format-unknown', '/format', { format: foundIn(format) })];
  if (typeof version === 'number' && Number.isInteger(version) && version >= 1 && version <= newest) return [];
  return [
    typeof version === 'number' && version > newest
      ? problemFor('version-unknown/newer', '/version', { version, newest })
      : problemFor('version-unknown', '/version', { version: foundIn(version), newest }),
  ];
}
