/** Lets a person end long work early without losing it: the first Ctrl-C aborts the signal, so that the work ends with what it has; a second
 * one ends the program, as it does everywhere else. @throws what the work throws */
export async function untilInterrupted<Answer>(
  process: Pick<NodeJS.EventEmitter, 'once' | 'off'>,
  work: (signal: AbortSignal) => Promise<Answer>,
): Promise<Answer> {
  const stop = new AbortController();
  const interrupt = (): void => stop.abort();
  process.once('SIGINT', interrupt);
  try {
    return await work(stop.signal);
  } finally {
    process.off('SIGINT', interrupt);
  }
}
