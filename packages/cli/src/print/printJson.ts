import type { Terminal } from '../terminal/terminal.ts';

/** Prints a value as JSON. Where the terminal shows ASCII only, the rest is escaped: the data stays the same. */
export function printJson(terminal: Terminal, value: unknown): void {
  const text = JSON.stringify(value, null, 2);
  // by halves of surrogate pairs, as JSON wants them; the looks of `paint` are never meant here
  const escaped = text.replaceAll(
    terminal.unicode ? /[\uFDD0-\uFDEF]/g : /[\u0080-\uffff]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
  terminal.write(`${escaped}\n`);
}
