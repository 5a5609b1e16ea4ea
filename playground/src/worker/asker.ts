import type { Model } from '@faultodds/core';
import { problemInWords } from '../words/problemInWords.ts';
import { kindsGivenUp, type Answer, type ChangedNumber, type Question, type Reply, type Request } from './question.ts';

/** Asks a worker; a new list of questions takes the place of the one before, finished or not. */
export interface Asker {
  /** @param onanswer called with every answer, better ones of the same kind after rougher ones. @param onend called once after the last, with
   * what core refused in its words, or ''. */
  ask(
    questions: readonly Question[],
    changes: readonly ChangedNumber[],
    onanswer: (answer: Answer) => void,
    onend?: (refused: string) => void,
  ): void;
  /** Stops at once, whatever is being worked out. */
  cancel(): void;
  /** The same, and keeps no idle worker either. */
  end(): void;
}

/** Starts no worker before the first question. A worker that is busy when it is asked anew is told so where it hears that soon, and goes on
 * to the new questions as warm as it is; otherwise it is ended, not waited for. */
export function createAsker(model: Model, makeWorker: () => Worker = newWorker): Asker {
  let worker: Worker | undefined;
  let asked = 0;
  /** What the worker is at; nothing when it is idle. */
  let asking: readonly Question[] = [];

  const send = (request: Request): void => worker?.postMessage(request);
  function cancel(): void {
    asked += 1;
    if (asking.every(({ kind }) => kindsGivenUp.has(kind))) {
      if (asking.length > 0) send({ kind: 'stop' });
    } else end();
    asking = [];
  }
  function end(): void {
    worker?.terminate();
    worker = undefined;
  }

  return {
    cancel,
    end() {
      cancel();
      end();
    },
    ask(questions, changes, onanswer, onend) {
      cancel();
      if (worker === undefined) {
        worker = makeWorker();
        send({ kind: 'model', model });
      }
      const id = asked;
      asking = questions;
      worker.onmessage = ({ data }: MessageEvent<Reply>) => {
        if (data.id !== asked) return;
        if (data.kind === 'answer') return onanswer(data.answer);
        asking = [];
        onend?.(data.kind === 'failed' ? data.problems.map(problemInWords).join(' ') || data.message : '');
      };
      send({ kind: 'questions', id, changes, questions });
    },
  };
}

function newWorker(): Worker {
  return new Worker(new URL('./answer.worker.ts', import.meta.url), { type: 'module' });
}
