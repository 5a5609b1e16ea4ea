import { CommandError } from '../terminal/commandError.ts';

// the Unicode standard keeps these for a program's own use, and `paint` uses them: raw or as JSON writes them
const RESERVED = /[\uFDD0-\uFDEF]|\\ufd[de][0-9a-f]/i;

/** Bytes as text, without a byte order mark. @param path names them in an error.
 * @throws CommandError they are not UTF-8, or hold characters that must not be passed on */
export function textOf(bytes: Buffer, path: string): string {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new CommandError(
      `'${path}' is not UTF-8 at byte ${firstWrongByte(bytes) + 1}; save it as UTF-8 in an editor`,
    );
  }
  if (RESERVED.test(text)) {
    throw new CommandError(
      `'${path}' contains a character from U+FDD0 to U+FDEF, which is not allowed in text; remove it`,
    );
  }
  return text;
}

function firstWrongByte(bytes: Buffer): number {
  const replaced = Buffer.from(bytes.toString('utf8'));
  const at = bytes.findIndex((byte, index) => byte !== replaced[index]);
  return Math.max(at, 0);
}
