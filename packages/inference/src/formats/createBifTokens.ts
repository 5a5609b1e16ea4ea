import { FormatError } from '../errors/formatError.ts';

/** Reads the words and marks of BIF text one by one, skipping blanks, comments and properties' contents on request. */
export interface BifTokens {
  /** Offset where the token last taken began. */
  start(): number;
  /** Next token without taking it; '' at the end. */
  peek(): string;
  take(): string;
  /** Takes the token if it is this one. */
  accept(token: string): boolean;
  /** Takes this token. @throws FormatError `bif-syntax` when another stands there. */
  expect(token: string): void;
  /** Takes a word (a name, a number, a quoted string). @throws FormatError `bif-syntax` */
  word(what: string): string;
  /** Takes everything up to and including the next ';'. */
  skipStatement(): void;
}

// Character by character: a pattern that repeats a choice remembers every turn, and runs out of stack on a long run of blanks.
const marks = new Set('{}()[]|,;');
const isBlank = (sign: string | undefined): boolean => sign !== undefined && /\s/.test(sign);

/** Where blanks and comments from `at` on end; a block comment that is left open ends nothing. */
function afterBlanks(text: string, from: number): number {
  let at = from;
  for (;;) {
    while (isBlank(text[at])) at += 1;
    if (text.startsWith('//', at)) {
      const end = text.indexOf('\n', at);
      at = end < 0 ? text.length : end;
    } else if (text.startsWith('/*', at)) {
      const end = text.indexOf('*/', at + 2);
      if (end < 0) return at;
      at = end + 2;
    } else return at;
  }
}

/** Where the token at `at` ends; `at` itself when none begins there. */
function afterToken(text: string, at: number): number {
  if (at >= text.length) return at;
  if (marks.has(text[at]!)) return at + 1;
  if (text[at] === '"') {
    let end = at + 1;
    while (end < text.length && text[end] !== '"' && text[end] !== '\n') end += 1;
    return text[end] === '"' ? end + 1 : at;
  }
  let end = at;
  while (end < text.length && text[end] !== '"' && !marks.has(text[end]!) && !isBlank(text[end])) {
    if (text[end] === '/' && (text[end + 1] === '/' || text[end + 1] === '*')) break;
    end += 1;
  }
  return end;
}

/** Opens BIF text for reading. */
export function createBifTokens(text: string): BifTokens {
  let at = 0;
  let begun = 0;
  let next: string | null = null;
  const peek = (): string => {
    if (next !== null) return next;
    at = afterBlanks(text, at);
    next = text.slice(at, afterToken(text, at));
    if (next === '' && at < text.length)
      throw new FormatError('bif-syntax', `found '${text[at]}'`, 'a quote or a comment may be left open', text, at);
    return next;
  };
  const take = (): string => {
    const taken = peek();
    begun = at;
    at += taken.length;
    next = null;
    return taken;
  };
  const accept = (wanted: string): boolean => {
    if (peek() !== wanted) return false;
    take();
    return true;
  };
  const wrong = (expected: string): never => {
    const found = peek();
    throw new FormatError(
      'bif-syntax',
      `found ${found === '' ? 'the end of the text' : `'${found}'`}, expected ${expected}`,
      'compare with the statement before',
      text,
      at,
    );
  };
  return {
    start: () => begun,
    peek,
    take,
    accept,
    expect: (wanted) => {
      if (!accept(wanted)) wrong(`'${wanted}'`);
    },
    word: (what) => {
      const found = peek();
      if (found === '' || marks.has(found)) wrong(what);
      take();
      return found.startsWith('"') ? found.slice(1, -1) : found;
    },
    skipStatement: () => {
      while (peek() !== ';') if (take() === '') wrong("';'");
      take();
    },
  };
}
