import type { Problem } from '../errors/faultoddsError.ts';
import { quoteFound } from '../errors/quoteFound.ts';

const newest = 2;

/** Why a value is not a case this version can read, before its details are looked at: one problem at most. */
export function findVersionProblems(input: unknown): Problem[] {
  if (typeof input !== 'object' || input === null || Array.isArray(input)) {
    return [
      { code: 'type-wrong', path: '', message: 'this is not an object', hint: 'give a saved case, as parsed JSON' },
    ];
  }
  const { format, version } = input as { readonly format?: unknown; readonly version?: unknown };
  if (format !== 'faultodds-case') {
    const found = format === undefined ? 'no format is stated' : `found format ${quoteFound(format)}`;
    return [
      {
        code: 'format-unknown',
        path: '/format',
        message: `${found}, expected 'faultodds-case'`,
        hint: 'give a saved case',
      },
    ];
  }
  if (version === 1 || version === newest) return [];
  const isNewer = typeof version === 'number' && version > newest;
  return [
    {
      code: 'version-unknown',
      path: '/version',
      message: isNewer
        ? `the case was saved in version ${version} of the format, this program reads versions up to ${newest}`
        : `found version ${quoteFound(version)}, expected a whole number from 1 to ${newest}`,
      hint: isNewer ? 'use a newer faultodds to open it' : `versions are whole numbers from 1 to ${newest}`,
    },
  ];
}
