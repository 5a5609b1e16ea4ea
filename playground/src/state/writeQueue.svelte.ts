/** Why a device keeps nothing: the browser refuses its storage, there is no room, or there is no answer (yet). */
export type WriteTrouble = 'refused' | 'full' | 'silent';

/** The writes to the device, one after the other: an older state must not overtake a newer one. What fails stays and is tried again. */
export interface WriteQueue {
  /** Whether everything that was to be written lies on the device. */
  readonly isSaved: boolean;
  readonly trouble: WriteTrouble | null;
  /** @returns whether something of this key is still to be written. */
  isWaiting(key: string): boolean;
  /** Writes soon; takes the place of what waits under the same key. */
  put(key: string, write: () => Promise<void>): void;
  /** Forgets what waits under a key. */
  drop(key: string): void;
  /** A question to the device: when the browser fails it or does not answer in time, that is the trouble; an answer ends it,
   * unless something could not be written. */
  ask<T>(question: Promise<T>): Promise<T>;
  /** Resolves when nothing is left to write, or nothing can be written. */
  settled(): Promise<void>;
}

/** A device that has not answered by then is called silent, though an answer still counts. Milliseconds. */
const PATIENCE = 5_000;
/** How long until what failed is tried again without anybody's doing. Milliseconds. */
const AGAIN = 15_000;

/** Makes the queue, empty. */
export function createWriteQueue(): WriteQueue {
  // eslint-disable-next-line svelte/prefer-svelte-reactivity -- nothing on the screen follows it
  const waiting = new Map<string, () => Promise<void>>();
  let left = $state(0);
  let trouble = $state<WriteTrouble | null>(null);
  let working: string | null = null;
  /** Why the last write failed: that a question is answered meanwhile does not mend it. */
  let failed: WriteTrouble | null = null;
  let retry: ReturnType<typeof setTimeout> | undefined;
  let listening: (() => void)[] = [];

  function update(): void {
    left = waiting.size + (working === null ? 0 : 1);
    if (left > 0 && trouble === null) return;
    for (const one of listening) one();
    listening = [];
  }

  async function ask<T>(question: Promise<T>): Promise<T> {
    const timer = setTimeout(() => {
      trouble = 'silent';
      update();
    }, PATIENCE);
    try {
      const answer = await question;
      trouble = failed;
      return answer;
    } catch (error) {
      if (error instanceof DOMException) trouble = error.name === 'QuotaExceededError' ? 'full' : 'refused';
      throw error;
    } finally {
      clearTimeout(timer);
      update();
    }
  }

  async function work(): Promise<void> {
    clearTimeout(retry);
    while (working === null) {
      const [next] = waiting;
      if (next === undefined) break;
      const [key, write] = next;
      waiting.delete(key);
      working = key;
      try {
        await ask(write().then(() => void (failed = null)));
        working = null;
      } catch (error) {
        working = null;
        failed = trouble;
        if (!waiting.has(key)) waiting.set(key, write);
        update();
        if (!(error instanceof DOMException)) throw error;
        retry = setTimeout(() => void work(), AGAIN);
        return;
      }
    }
    update();
  }

  return {
    get isSaved() {
      return left === 0;
    },
    get trouble() {
      return trouble;
    },
    isWaiting: (key) => waiting.has(key) || working === key,
    put(key, write) {
      waiting.set(key, write);
      update();
      void work();
    },
    drop(key) {
      waiting.delete(key);
      update();
    },
    ask,
    settled: () =>
      left === 0 || trouble !== null ? Promise.resolve() : new Promise((resolve) => void listening.push(resolve)),
  };
}
