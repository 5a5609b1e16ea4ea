/** Makes a terminal usable again that was left in the middle of a question: echo on, cursor shown, a line of its own. One that is gone is
 * left alone. */
export function restoreTerminal({ stdin, stdout }: Pick<NodeJS.Process, 'stdin' | 'stdout'>): void {
  try {
    if (stdin.isTTY) stdin.setRawMode(false);
    if (stdout.isTTY) stdout.write('\u001b[?25h\n');
  } catch {
    // it has hung up: nobody looks
  }
}
