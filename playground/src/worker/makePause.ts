/** Makes the pause between two turns of long work: once in a frame's time the messages that wait get theirs, and work that is no longer
 * wanted ends there. @throws the signal's reason */
export function makePause(
  signal: AbortSignal,
  now: () => number = () => performance.now(),
): () => Promise<void> | undefined {
  let since = now();
  return () => {
    if (now() - since < FRAME) return undefined;
    return nextTask().then(() => {
      signal.throwIfAborted();
      since = now();
    });
  };
}

const FRAME = 16;

/** A timer would be held back by some milliseconds; a message is a task of its own at once. */
function nextTask(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(undefined);
  });
}
