import type { CodeStatus, MalformedCode, TroubleCode } from './troubleCode.ts';

/** A list of codes, read. */
export interface TroubleCodeList {
  /** In the order of the list; a code that stands twice is kept once, with its stronger status. */
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
const STRENGTH: readonly CodeStatus[] = ['pending', 'stored', 'permanent'];

/** Reads a pasted list of trouble codes, such as `P0301, p0351 pending, P0016`. Codes are separated by anything; a status word counts for
 * the code before it, or, with a colon ("Pending: P0301 P0302"), for the rest of its line. What looks like neither is pointed out.
 * Form of a code after SAE J2012 / ISO 15031-6 (from memory): letter of the system, a digit 0-3, three hexadecimal digits.
 * @example parseTroubleCodes('P0301, p0351 pending').codes[1] // { code: 'P0351', status: 'pending' } */
export function parseTroubleCodes(text: string): TroubleCodeList {
  const found = new Map<string, TroubleCode>();
  const malformed: MalformedCode[] = [];
  let last: string | undefined;
  let ofLine: CodeStatus = 'stored';
  for (const match of text.matchAll(/\n|[^\s,;|/()[\]{}]+/g)) {
    const [piece] = match;
    if (piece === '\n') {
      [last, ofLine] = [undefined, 'stored'];
      continue;
    }
    const heads = piece.endsWith(':');
    const token = piece.replace(/[.:!]+$/, '').replace(/^[-*•"']+|["']+$/g, '');
    const status = STATUS.get(token.toLowerCase());
    const [, code, failureType] = CODE.exec(token.toUpperCase()) ?? [];
    if (code !== undefined) {
      keep(found, { code, status: ofLine, ...(failureType === undefined ? {} : { failureType }) });
      last = code;
    } else if (status !== undefined && (heads || last === undefined)) ofLine = status;
    else if (status !== undefined && last !== undefined) found.set(last, { ...found.get(last)!, status });
    else if (token !== '' && !IGNORED.has(token.toLowerCase()))
      malformed.push({ text: token, at: match.index, hint: hintFor(token) });
  }
  return { codes: [...found.values()], malformed };
}

function keep(found: Map<string, TroubleCode>, code: TroubleCode): void {
  const known = found.get(code.code);
  const isWeaker = known !== undefined && STRENGTH.indexOf(known.status) >= STRENGTH.indexOf(code.status);
  found.set(code.code, isWeaker ? known : code);
}

function hintFor(token: string): string {
  const repaired = token
    .toUpperCase()
    .replace(
      /^([PCBU])(.*)$/,
      (_, letter: string, rest: string) =>
        letter + rest.replaceAll('O', '0').replaceAll(/[IL]/g, '1').replaceAll('S', '5'),
    );
  if (repaired !== token.toUpperCase() && CODE.test(repaired)) return `did you mean ${repaired}?`;
  if (/^[PCBU][0-9A-F]*$/i.test(token)) {
    if (token.length !== 5) return `a code has a letter and four digits, this one ${token.length - 1}`;
    return 'the first digit of a code is 0 to 3';
  }
  if (/^\d{4}$/.test(token)) return `is the letter missing: P${token}?`;
  return 'a code looks like P0301: P, C, B or U, and four digits';
}
