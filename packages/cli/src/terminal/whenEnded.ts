const signals = { SIGHUP: 1, SIGINT: 2, SIGTERM: 15 } as const;
const HUNG_UP = 129;

/** Acts once when the program is ended in the middle of its work: by a signal, by a fault, or because nobody can answer any more.
 * The exit code after a signal is 128 and its number. @returns to be called when the work is done: then nothing is acted on. */
export function whenEnded(process: NodeJS.Process, act: () => void): () => void {
  const ended = (code: number): void => {
    // the signals are still taken: a terminal that closes fails first and sends its signal afterwards, in the middle of this
    act();
    // the questions are not through, and nothing went wrong: whoever answered is gone
    if (code === 0) process.exitCode = HUNG_UP;
  };
  const handlers = Object.entries(signals).map(
    ([signal, number]) => [signal as NodeJS.Signals, () => process.exit(128 + number)] as const,
  );
  const release = (): void => {
    process.off('exit', ended);
    for (const [signal, handler] of handlers) process.off(signal, handler);
  };
  process.on('exit', ended);
  for (const [signal, handler] of handlers) process.on(signal, handler);
  return release;
}
