import { FormatError } from './formatError.ts';

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

const blank = /(?:\s|\/\/[^\n]*|\/\*[\s\S]*?\*\/)*/y;
const token = /[{}()[\]|,;]|"[^"\n]*"|(?:(?!\/[/*])[^\s{}()[\]|,;"])+/y;

/** Opens BIF text for reading. */
export function bifTokens(text: string): BifTokens {
  let at = 0;
  let begun = 0;
  let next: string | null = null;
  const peek = (): string => {
    if (next !== null) return next;
    blank.lastIndex = at;
    blank.exec(text);
    at = blank.lastIndex;
    token.lastIndex = at;
    const found = token.exec(text);
    if (found === null && at < text.length)
      throw new FormatError('bif-syntax', `found '${text[at]}'`, 'a quote or a comment may be left open', text, at);
    next = found === null ? '' : found[0];
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
      if (found === '' || /^[{}()[\]|,;]$/.test(found)) wrong(what);
      take();
      return found.startsWith('"') ? found.slice(1, -1) : found;
    },
    skipStatement: () => {
      while (peek() !== ';') if (take() === '') wrong("';'");
      take();
    },
  };
}
