import { createAsker } from '../worker/asker.ts';
import type { Answer, Answers, Question } from '../worker/question.ts';
import type { CaseStore } from './caseStore.svelte.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** Something about the open case that is worked out beside the page on request: answers as they come, until all are there or it is stopped. */
export interface BackgroundTask<Kind extends keyof Answers> {
  /** In the order they came. */
  readonly answers: readonly Answers[Kind][];
  readonly working: boolean;
  /** Whole seconds it has worked so far. */
  readonly seconds: number;
  /** Stopped before it was done. */
  readonly stopped: boolean;
  /** What core refused, in its words, or ''. */
  readonly refused: string;
  /** Begins anew. */
  start(): void;
  /** Stops at once; what has come stays. */
  stop(): void;
}

/** Makes a task for the open case; another case, or a change to it, ends it and takes its answers away. Called while a component is made.
 * @param questions what is asked, made anew at every start */
export function createBackgroundTask<Kind extends keyof Answers>(
  knowledge: () => Knowledge,
  store: () => CaseStore,
  kind: Kind,
  questions: () => readonly Question[],
): BackgroundTask<Kind> {
  const asker = createAsker(knowledge().model);
  let answers = $state.raw<readonly Answers[Kind][]>([]);
  let working = $state(false);
  let seconds = $state(0);
  let stopped = $state(false);
  let refused = $state('');
  let clock: ReturnType<typeof setInterval> | undefined;

  function stop(): void {
    stopped = working;
    finish('');
    asker.cancel();
  }
  function finish(why: string): void {
    clearInterval(clock);
    working = false;
    refused = why;
  }
  function take({ kind: answered, answer }: Answer): void {
    if (answered === kind) answers = [...answers, answer as Answers[Kind]];
  }
  function clear(): void {
    stop();
    answers = [];
    stopped = false;
  }

  $effect(() => {
    void store().now.session;
    return clear;
  });
  $effect(() => () => asker.end());

  return {
    get answers() {
      return answers;
    },
    get working() {
      return working;
    },
    get seconds() {
      return seconds;
    },
    get stopped() {
      return stopped;
    },
    get refused() {
      return refused;
    },
    start() {
      clear();
      working = true;
      seconds = 0;
      clock = setInterval(() => (seconds += 1), 1000);
      asker.ask(questions(), [], take, finish);
    },
    stop,
  };
}
