import { problemFor } from '../validation/problemFor.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import type { CodeStatus, MalformedCode, TroubleCode } from './troubleCode.ts';

/** A list of codes, read. */
export interface TroubleCodeList {
  /** In the order of the list; a code that occurs twice is listed once, with its stronger status. */
  readonly codes: readonly TroubleCode[];
  readonly malformed: readonly MalformedCode[];
}

const CODE = /^([PCBU][0-3][0-9A-F]{3})(?:[-:]([0-9A-F]{2}))?$/;

// Words that tools put beside codes. From common practice, not from the standard.
const STATUS = new Map<string, CodeStatus>([
  ['pending', 'pending'],
  ['permanent', 'permanent'],
  ['stored', 'stored'],
  ['confirmed', 'stored'],
  ['current', 'stored'],
  ['active', 'stored'],
  ['history', 'stored'],
  ['historic', 'stored'],
  ['intermittent', 'stored'],
]);
const IGNORED = new Set(['and', 'code', 'codes', 'dtc', 'dtcs', 'fault', 'faults', 'status', 'none', 'no']);
// A book of codes; what a person pastes has a few lines.
const LONGEST_LIST = 1_000_000;
// No more of a piece that is no code is quoted.
const QUOTED = 60;
const STRENGTH: readonly CodeStatus[] = ['pending', 'stored', 'permanent'];

/** Reads a pasted list of trouble codes, such as `P0301, p0351 pending, P0016`. Codes are separated by anything; a status word counts for
 * the code before it, or, with a colon ("Pending: P0301 P0302"), for the rest of its line. What looks like neither is pointed out, and
 * where reading ends in a list of more than a million characters.
 * Form of a code after SAE J2012 / ISO 15031-6 (from memory): letter of the system, a digit 0-3, three hexadecimal digits.
 * @example parseTroubleCodes('P0301, p0351 pending').codes[1] // { code: 'P0351', status: 'pending' } */
export function parseTroubleCodes(text: string): TroubleCodeList {
  const found = new Map<string, TroubleCode>();
  const malformedPieces: MalformedCode[] = [];
  let last: string | undefined;
  let ofLine: CodeStatus = 'stored';
  for (const match of text.matchAll(/\n|[^\s,;|/()[\]{}]+/g)) {
    const [piece] = match;
    if (piece === '\n') {
      [last, ofLine] = [undefined, 'stored'];
      continue;
    }
    if (match.index >= LONGEST_LIST) {
      malformedPieces.push(unread(piece, match.index));
      break;
    }
    const heads = piece.endsWith(':');
    const token = trim(trim(piece, '', '.:!'), `-*•"'`, `"'`);
    const status = STATUS.get(token.toLowerCase());
    const [, code, failureType] = CODE.exec(token.toUpperCase()) ?? [];
    if (code !== undefined) {
      keep(found, { code, status: ofLine, ...(failureType === undefined ? {} : { failureType }) });
      last = code;
    } else if (status !== undefined && (heads || last === undefined)) ofLine = status;
    else if (status !== undefined && last !== undefined) found.set(last, { ...found.get(last)!, status });
    else if (token !== '' && !IGNORED.has(token.toLowerCase())) malformedPieces.push(malformedCode(token, match.index));
  }
  return { codes: [...found.values()], malformed: malformedPieces };
}

function keep(found: Map<string, TroubleCode>, code: TroubleCode): void {
  const known = found.get(code.code);
  const isWeaker = known !== undefined && STRENGTH.indexOf(known.status) >= STRENGTH.indexOf(code.status);
  found.set(code.code, isWeaker ? known : code);
}

/** A piece without the signs it begins and ends with; by hand, since a pattern looks for the end from every sign anew. */
function trim(piece: string, before: string, behind: string): string {
  let from = 0;
  let to = piece.length;
  while (from < to && before.includes(piece[from]!)) from += 1;
  while (to > from && behind.includes(piece[to - 1]!)) to -= 1;
  return piece.slice(from, to);
}

function malformedCode(token: string, at: number): MalformedCode {
  return malformed(token, at, problemOf(token, `/${at}`));
}

/** What stands beyond the end of the longest list that is read. */
function unread(piece: string, at: number): MalformedCode {
  return malformed(piece, at, problemFor('list-too-long', `/${at}`, { most: LONGEST_LIST }));
}

function malformed(piece: string, at: number, { hint, wording }: Problem): MalformedCode {
  return { text: quoted(piece), at, hint, ...(wording === undefined ? {} : { wording }) };
}

function quoted(piece: string): string {
  return piece.length > QUOTED ? `${piece.slice(0, QUOTED)}…` : piece;
}

function problemOf(token: string, path: string): Problem {
  const text = quoted(token);
  const repaired = token
    .toUpperCase()
    .replace(
      /^([PCBU])(.*)$/,
      (_, letter: string, rest: string) =>
        letter + rest.replaceAll('O', '0').replaceAll(/[IL]/g, '1').replaceAll('S', '5'),
    );
  if (repaired !== token.toUpperCase() && CODE.test(repaired)) {
    return problemFor('code-malformed/repaired', path, { text, code: repaired });
  }
  if (/^[PCBU][0-9A-F]*$/i.test(token)) {
    return token.length === 5
      ? problemFor('code-malformed/first-digit', path, { text })
      : problemFor('code-malformed/length', path, { text, digits: token.length - 1 });
  }
  return problemFor(/^\d{4}$/.test(token) ? 'code-malformed/letter' : 'code-malformed', path, { text });
}
